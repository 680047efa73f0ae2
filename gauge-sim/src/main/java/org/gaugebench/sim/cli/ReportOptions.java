package org.gaugebench.sim.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The page of a run: where it goes. */
final class ReportOptions {
    private static final String EXAMPLE = "week.html";

    @Option(
            names = "--report",
            paramLabel = "HTML",
            description =
                    "Write the run as a page that any browser opens from disk: verdict, strips over"
                            + " time to zoom into, events; with --attribution also where the error"
                            + " comes from, over time. One run only.")
    private @Nullable Path place;

    ReportOptions() {}

    boolean isWanted() {
        return place != null;
    }

    /** Refuses what does not go together, before anything runs. */
    void check(boolean momentIsWanted) throws InputException {
        Path wanted = place;
        if (wanted == null) {
            return;
        }
        if (momentIsWanted) {
            throw new InputException(
                    "--report shows a whole run and --at a moment of it; ask for one of them");
        }
        OutputFile.checkEnding("--report", wanted, EXAMPLE);
    }

    /** Opens the file, if one is wanted. */
    ReportFile open() throws InputException {
        return new ReportFile(OutputFile.open("--report", place, EXAMPLE), isWanted());
    }
}
