package org.gaugebench.sim.cli;

import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeLimits;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.program.ProgramException;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A program of the user's in the place of the main gauge. */
final class DeviceOptions {
    @Option(
            names = "--device",
            paramLabel = "COMMAND",
            description =
                    "Run this program in the place of the main gauge (the first of kind core):"
                            + " counts go to its standard input, readouts come from its standard"
                            + " output, as docs/pipe-protocol.md tells. No shell is started.")
    private @Nullable String command;

    @Option(
            names = "--device-answer",
            paramLabel = "TIME",
            converter = TraceInterval.class,
            description =
                    "Time that the program may take for each answer on this machine"
                            + " (default: 10 s).")
    private @Nullable Long answerMillis;

    DeviceOptions() {}

    boolean isWanted() {
        return command != null;
    }

    /** Starts the program once, so that what cannot work is told before anything runs. */
    @Nullable PipeCommand tryOut() throws InputException {
        String text = command;
        if (text == null) {
            return null;
        }
        try {
            long limit = answerMillis == null ? PipeLimits.ANSWER_MILLIS : answerMillis;
            PipeCommand split = PipeCommand.of(text, Math.max(1, limit));
            PipeProgram.tryOut(split);
            return split;
        } catch (IllegalArgumentException e) {
            throw new InputException("--device: " + e.getMessage());
        } catch (ProgramException e) {
            throw new InputException(
                    "--device: the program '%s': %s; expected a program, such as './my-gauge'"
                            .formatted(text, e.getMessage()));
        }
    }

    /** Why a scenario cannot be run with the program; empty where it can. */
    String skipReason(Scenario scenario) {
        boolean fits = scenario.gauges().stream().anyMatch(it -> it.kind() == GaugeSpec.Kind.CORE);
        return !isWanted() || fits ? "" : "it has no gauge of kind core for the program to replace";
    }
}
