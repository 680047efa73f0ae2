package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.gaugebench.sim.agree.LockStep;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.device.PipeLimits;
import org.gaugebench.sim.program.ProgramException;
import org.gaugebench.sim.report.LockStepText;
import org.gaugebench.sim.report.VectorWriter;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** {@code compare --device}: the core and a program, or two programs, in step. */
final class LockStepRun {
    private final Terminal terminal;
    private final SeedOption seed;
    private final LockStep.@Nullable Program first;
    private final LockStep.Program second;
    private final @Nullable Path vectors;
    private int same;
    private int differ;
    private int broken;
    private long ticks;

    /**
     * Starts each program once, so that what cannot work is told before anything runs.
     *
     * @param commands one or two
     */
    LockStepRun(
            Terminal terminal,
            SeedOption seed,
            List<String> commands,
            @Nullable Long answerMillis,
            @Nullable Path vectors)
            throws InputException {
        if (commands.size() > 2) {
            throw new InputException(
                    "--device: %s programs; expected one to hold against the core, or two"
                            .formatted(commands.size()));
        }
        this.terminal = terminal;
        this.seed = seed;
        this.vectors = vectors;
        long limit = answerMillis == null ? PipeLimits.ANSWER_MILLIS : Math.max(1, answerMillis);
        first = commands.size() == 2 ? start(commands.get(0), limit) : null;
        second = start(commands.get(commands.size() - 1), limit);
    }

    private static LockStep.Program start(String text, long limit) throws InputException {
        LockStep.Program program;
        try {
            program = LockStep.Program.of(PipeCommand.of(text, limit));
        } catch (IllegalArgumentException e) {
            throw new InputException("--device: " + e.getMessage());
        } catch (ProgramException e) {
            throw new InputException(
                    "--device: the program '%s': %s; expected a program, such as './my-gauge'"
                            .formatted(text, e.getMessage()));
        }
        if (program.hello().registers().isEmpty()) {
            throw new InputException(
                    "--device: '%s' gives no registers to compare; expected a line in its hello"
                                    .formatted(text)
                            + " such as 'registers charge-nanocoulombs' or 'registers all'");
        }
        return program;
    }

    /** Plays all, and prints in their order. */
    int run(List<String> files, int threads) throws InputException, InterruptedException {
        List<Scenario> all = ScenarioLoader.load(files, null);
        List<Scenario> fitting = all.stream().filter(LockStepRun::hasCore).toList();
        if (fitting.isEmpty()) {
            throw new InputException("compare: no scenario has a gauge of kind core to replace");
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<LockStep.Result>> running = new ArrayList<>();
            for (Scenario each : fitting) {
                long chosen = seed.of(each);
                running.add(pool.submit(() -> LockStep.of(each, chosen, first, second)));
            }
            for (int i = 0; i < fitting.size(); i++) {
                tell(fitting.get(i), running.get(i));
            }
        } finally {
            pool.shutdownNow();
        }
        int leftOut = all.size() - fitting.size();
        terminal.out().print(LockStepText.sum(same, differ, broken, leftOut, ticks));
        terminal.out().flush();
        int code = differ == 0 ? ExitCodes.OK : ExitCodes.FAILED;
        return broken > 0 ? ExitCodes.PROGRAM_FAILED : code;
    }

    private static boolean hasCore(Scenario scenario) {
        return scenario.gauges().stream().anyMatch(it -> it.kind() == GaugeSpec.Kind.CORE);
    }

    private void tell(Scenario scenario, Future<LockStep.Result> running)
            throws InputException, InterruptedException {
        try {
            LockStep.Result result = running.get();
            ticks += result.ticks();
            terminal.out().print(LockStepText.of(result));
            terminal.out().flush();
            LockStep.Parting parting = result.parting();
            if (parting == null) {
                same++;
                return;
            }
            differ++;
            write(scenario, parting);
        } catch (ExecutionException e) {
            if (!(e.getCause() instanceof PipeFailure failure)) {
                throw new IllegalStateException("a comparison died", e.getCause());
            }
            broken++;
            terminal.out().print("BROKE    " + LockStepText.name(scenario) + "\n");
            terminal.out().flush();
            terminal.err().println(failure.getMessage());
            failure.details().forEach(line -> terminal.err().println("  " + line));
        }
    }

    private void write(Scenario scenario, LockStep.Parting parting) throws InputException {
        Path top = vectors;
        if (top == null) {
            return;
        }
        Path folder = top.resolve("%03d".formatted(differ));
        GaugeSpec gauge =
                scenario.gauges().stream()
                        .filter(it -> it.kind() == GaugeSpec.Kind.CORE)
                        .findFirst()
                        .orElseThrow();
        try {
            Files.createDirectories(folder);
            try (VectorWriter writer = new VectorWriter(folder, gauge.name(), parting.atMillis())) {
                long rows = writer.run(new Rig(scenario, seed.of(scenario), writer));
                writer.keep();
                terminal.out().print("%s: %d rows that show it\n".formatted(folder, rows));
                terminal.out().flush();
            }
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    "--vectors: cannot write to %s: %s; expected a folder such as vectors"
                            .formatted(folder, FileTrouble.words(e)));
        }
    }
}
