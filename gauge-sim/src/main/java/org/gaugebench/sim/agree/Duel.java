package org.gaugebench.sim.agree;

import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeDevice;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.memory.SimulatedStore;
import org.jspecify.annotations.Nullable;

/**
 * Plays one script to the core and to a program. They are held against each other every some steps
 * by the digest of all ticks between; where they differ, once more from the start and after every
 * step, to name the first.
 */
public final class Duel {
    /** As many as go into one message. */
    private static final int STEPS_BETWEEN = 1_024;

    private static final String ON_THE_WAY =
            "the digests of all ticks differ: a register differed on the way";

    /** Of two whose registers were compared after each step. */
    static final String FOLDED_OTHERWISE =
            "each register that it gives is the same and the digests differ: it folds otherwise, or"
                    + " not after each call; see 'A digest' in the page of the pipe";

    private final Script script;
    private final int between;
    private final SimulatedStore programMemory;
    private final PipeProgram program;
    private FoldedCore folded = new FoldedCore();
    private final Player core;
    private final Player other;
    private @Nullable PipeDevice pipe;
    private List<Register> given = List.of();

    private Duel(Script script, PipeCommand command, int between) {
        this.script = script;
        this.between = between;
        core =
                new Player(
                        script,
                        script.memory(),
                        (settings, store, events) -> {
                            PipeDevice before = pipe;
                            if (before != null && before.startsAnew()) {
                                folded = new FoldedCore();
                            }
                            return folded.watch(new CoreDevice(settings, store, events));
                        });
        programMemory = script.memory();
        program = new PipeProgram(command, programMemory, true);
        other =
                new Player(
                        script,
                        programMemory,
                        (settings, store, events) -> {
                            PipeDevice device = new PipeDevice(program, settings, store, events);
                            pipe = device;
                            return device;
                        });
    }

    /**
     * Plays a script.
     *
     * @param script whose first step is power
     * @param command how the program is started
     * @return where they first differ; null for nowhere
     */
    public static @Nullable Difference first(Script script, PipeCommand command) {
        Difference coarse = run(script, command, STEPS_BETWEEN);
        if (coarse == null) {
            return null;
        }
        Difference exact = run(script, command, 1);
        // A program that only differs when it is asked for many ticks at once is found all the
        // same.
        return exact == null ? coarse : exact;
    }

    /** Whether they differ, as fast as can be said. */
    static boolean differs(Script script, PipeCommand command) {
        return run(script, command, STEPS_BETWEEN) != null;
    }

    private static @Nullable Difference run(Script script, PipeCommand command, int between) {
        Duel duel = new Duel(script, command, between);
        try (PipeProgram program = duel.program) {
            return duel.play(program);
        }
    }

    private @Nullable Difference play(PipeProgram program) {
        List<Step> steps = script.steps();
        long ticks = 0;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            ticks += step instanceof Step.Tick ? 1 : 0;
            try {
                if (step instanceof Step.Power && i > 0) {
                    // A program that is started anew takes its digest with it.
                    PipeDevice ending = pipe;
                    boolean isLost = ending != null && ending.startsAnew();
                    Difference found = isLost ? look(i - 1, ticks) : null;
                    if (found != null) {
                        return found;
                    }
                }
                core.play(step);
                other.play(step);
                if ((i + 1) % between == 0 || i + 1 == steps.size()) {
                    Difference found = look(i, ticks);
                    if (found != null) {
                        return found;
                    }
                }
                if (i + 1 == steps.size()) {
                    program.end();
                }
            } catch (PipeFailure e) {
                return new Difference(
                        i, ticks, String.valueOf(e.getMessage()), List.of(), e.details());
            }
        }
        return null;
    }

    private @Nullable Difference look(int step, long ticks) {
        other.settle();
        if (core.hasPower() != other.hasPower()) {
            return difference(
                    step,
                    ticks,
                    core.hasPower()
                            ? "the program's power was cut and the core's was not: it used its"
                                    + " memory at another moment"
                            : "the core's power was cut and the program's was not: it used its"
                                    + " memory at another moment");
        }
        if (core.toldMark() != other.toldMark()) {
            return difference(
                    step,
                    ticks,
                    "they announced or answered different things; last event of the core: %s; of"
                                    .formatted(core.lastEvent())
                            + " the program: %s; last answers: %s and %s"
                                    .formatted(
                                            other.lastEvent(),
                                            core.lastOutcome(),
                                            other.lastOutcome()));
        }
        if (core.memoryMark() != other.memoryMark()) {
            return difference(step, ticks, "they asked different things of their memory");
        }
        if (!core.hasPower()) {
            return null;
        }
        List<Difference.Pair> pairs = pairs();
        long unequal = pairs.stream().filter(Difference.Pair::differs).count();
        if (unequal > 0) {
            return new Difference(step, ticks, Pairs.unequal(unequal), pairs, List.of());
        }
        PipeDevice device = pipe;
        if (device != null && device.givesDigest() && device.tickDigest() != folded.digest()) {
            return difference(step, ticks, between == 1 ? FOLDED_OTHERWISE : ON_THE_WAY);
        }
        return null;
    }

    private Difference difference(int step, long ticks, String what) {
        return new Difference(step, ticks, what, pairs(), List.of());
    }

    private List<Difference.Pair> pairs() {
        if (!core.hasPower() || !other.hasPower()) {
            return List.of();
        }
        Registers left = core.registers();
        Registers right = other.registers();
        if (given.isEmpty()) {
            PipeDevice device = pipe;
            given = device == null ? List.of() : device.givenRegisters();
        }
        return Pairs.of(given, left, right, core.device(), other.device());
    }
}
