package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The value change dump of a run: where it goes. */
final class DumpOptions {
    static final String EXAMPLE = "day.vcd";

    @Option(
            names = "--dump",
            paramLabel = "VCD",
            description =
                    "Write every change of truth, readings, faults and events to this value change"
                            + " dump (IEEE 1364), which waveform viewers open; one run only.")
    private @Nullable Path place;

    DumpOptions() {}

    boolean isWanted() {
        return place != null;
    }

    /** Refuses what does not go together, before anything runs. */
    void check(boolean momentIsWanted, List<Scenario> scenarios) throws InputException {
        Path wanted = place;
        if (wanted == null) {
            return;
        }
        if (momentIsWanted) {
            throw new InputException(
                    "--dump shows a whole run and --at a moment of it; ask for one of them");
        }
        OutputFile.checkEnding("--dump", wanted, EXAMPLE);
        RunCommand.alone(scenarios, "--dump: one file holds the signals of one run");
    }

    /** Opens the file, if one is wanted. */
    DumpFile open(long seed) throws InputException {
        return new DumpFile(place, seed);
    }
}
