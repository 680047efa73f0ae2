package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.report.TuneJson;
import org.gaugebench.sim.report.TunePart;
import org.gaugebench.sim.report.TunePicture;
import org.gaugebench.sim.report.TuneText;
import org.gaugebench.sim.scenario.SeedRange;
import org.gaugebench.sim.tune.TunePool;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneTask;
import org.gaugebench.sim.tune.Tuning;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tune}: settings of the full-charge rule for a set of scenarios. */
@Command(
        name = "tune",
        header = "Search the settings of the full-charge rule over a set of scenarios.",
        description = {
            "",
            "Begins at the loosest rule and looks for the fewest false fulls, then the fewest"
                    + " missed ones, then the smallest error, within what is safe for the"
                    + " chemistry. Shows what can be traded for what, says which scenario holds"
                    + " each setting where it stands, and checks the choice on seeds that the"
                    + " search never saw. The sheet of the battery's maker goes before it.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:with the chosen settings no full is false and none missed, on all seeds",
            " 1:some are, and the text says where",
            " 2:a file cannot be run, or the command line is wrong; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim tune --covers FUL --chemistry lead-acid-agm scenarios",
            "  gauge-sim tune --out parts/tuned.yaml --picture tuned.svg \\",
            "    my-summer.yaml my-winter.yaml"
        })
final class TuneCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description =
                    "Scenario files, folders (every .yaml file below, without parts/) or patterns"
                            + " such as 'scenarios/**/*.yaml'.")
    private List<String> files = new ArrayList<>();

    @Mixin private final TuneOptions options = new TuneOptions();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(
            names = "--out",
            paramLabel = "PART",
            description =
                    "Write the chosen settings as a part, such as parts/tuned.yaml; a scenario"
                            + " takes them with 'parts: [tuned]'.")
    private @Nullable Path out;

    @Option(
            names = "--picture",
            paramLabel = "SVG",
            description = "Draw what was tried, and the frontier, to this SVG file.")
    private @Nullable Path picture;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = ShelfOptions.ThreadCount.class,
            description =
                    "Runs at the same time (default: as many as the machine has cores). Output"
                            + " does not depend on it.")
    private @Nullable Integer threads;

    @Option(names = "--json", description = "Print one JSON object instead of text.")
    private boolean json;

    TuneCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        // One run of each combination: the seeds of the search go before the file's own.
        SeedRange one = new SeedRange(1, 1);
        TuneTask task = options.task(ScenarioLoader.load(files, one));
        List<OutputFile> open = new ArrayList<>();
        boolean done = false;
        try {
            OutputFile part = opened(open, "--out", out, "parts/tuned.yaml");
            OutputFile drawing = opened(open, "--picture", picture, "tuned.svg");
            TuneResult result = search(task);
            part.keep(() -> TunePart.of(result, Version.text()));
            drawing.keep(() -> TunePicture.of(result, Version.text()));
            done = true;
            terminal.out()
                    .print(
                            json
                                    ? TuneJson.of(result, Version.text())
                                    : TuneText.of(result, out == null ? "" : out.toString()));
            terminal.out().flush();
            return result.isGood() ? ExitCodes.OK : ExitCodes.FAILED;
        } finally {
            if (!done) {
                open.forEach(OutputFile::abandon);
            }
        }
    }

    private TuneResult search(TuneTask task) {
        int count = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        StudyProgress progress = new StudyProgress(terminal, "runs");
        try (TunePool pool = new TunePool(count, progress::next)) {
            return Tuning.of(task, pool);
        } finally {
            progress.clear();
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
