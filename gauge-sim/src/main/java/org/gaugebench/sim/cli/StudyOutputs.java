package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.report.StudyJson;
import org.gaugebench.sim.report.StudyPage;
import org.gaugebench.sim.report.StudyPicture;
import org.gaugebench.sim.report.StudyTables;
import org.gaugebench.sim.report.StudyText;
import org.gaugebench.sim.study.StudyResult;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the figures of a study go. */
final class StudyOutputs {
    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = ShelfOptions.ThreadCount.class,
            description =
                    "Devices that run at the same time (default: as many as the machine has"
                            + " cores). Output does not depend on it.")
    private @Nullable Integer threads;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            description = "Write a row for each moment: limits both ways, and each cause's share.")
    private @Nullable Path csv;

    @Option(
            names = "--devices-csv",
            paramLabel = "FILE",
            description = "Write a row for each device: seed, values, worst error.")
    private @Nullable Path devices;

    @Option(
            names = "--picture",
            paramLabel = "SVG",
            description = "Draw the bands over time to this SVG file.")
    private @Nullable Path picture;

    @Option(
            names = "--report",
            paramLabel = "HTML",
            description =
                    "Write one page with limits, bands, causes and the worst devices to this file;"
                            + " it needs no network.")
    private @Nullable Path report;

    @Option(names = "--json", description = "Print one JSON object instead of text.")
    private boolean json;

    StudyOutputs() {}

    int threads() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    /** Whether any file or form was asked for. */
    boolean isAny() {
        return json || csv != null || devices != null || picture != null || report != null;
    }

    /** Work that comes to a result. */
    interface Work {
        StudyResult run() throws InputException;
    }

    /** Opens the files, does the work, writes and prints; nothing half-written stays. */
    int tell(Terminal terminal, Work work) throws InputException {
        List<OutputFile> open = new ArrayList<>();
        boolean done = false;
        try {
            OutputFile moments = opened(open, "--csv", csv, "bands.csv");
            OutputFile rows = opened(open, "--devices-csv", devices, "devices.csv");
            OutputFile drawing = opened(open, "--picture", picture, "bands.svg");
            OutputFile page = opened(open, "--report", report, "study.html");
            StudyResult result = work.run();
            moments.keep(() -> StudyTables.moments(result));
            rows.keep(() -> StudyTables.devices(result));
            drawing.keep(() -> StudyPicture.of(result, Version.text()));
            page.keep(() -> StudyPage.of(result, Version.text()));
            done = true;
            terminal.out()
                    .print(
                            json
                                    ? StudyJson.of(result, Version.text()) + "\n"
                                    : StudyText.of(result));
            terminal.out().flush();
            return result.isGood() ? ExitCodes.OK : ExitCodes.FAILED;
        } finally {
            if (!done) {
                open.forEach(OutputFile::abandon);
            }
        }
    }

    private static OutputFile opened(
            List<OutputFile> open, String option, @Nullable Path place, String example)
            throws InputException {
        OutputFile file = OutputFile.open(option, place, example);
        open.add(file);
        return file;
    }
}
