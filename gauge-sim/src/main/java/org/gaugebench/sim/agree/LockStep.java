package org.gaugebench.sim.agree;

import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.device.PipeHello;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * One scenario played to two gauges in step: the core, or a program, and another program. They are
 * held against each other at every whole minute: the digest of every tick so far, the registers,
 * events, answers, the traffic with the memory, and the words of the bus view where both tell them.
 * Where they part the minute is played once more, tick by tick. A program that gives no digest is
 * asked for its registers in every tick.
 *
 * <p>What is not covered: a program that is started anew for each life takes its digest with it
 * when power is cut in the middle of a write, so that its registers since the last whole minute are
 * seen only in what it announced and wrote. Changes that are due at the very end of the run are not
 * carried out: no tick follows them.
 */
public final class LockStep {
    private static final long MINUTE_MILLIS = 60_000;

    private final Scenario scenario;
    private final long seed;
    private final @Nullable Program first;
    private final Program second;
    private final boolean folds;
    private final boolean foldsEachLife;
    private final boolean wholeTables;
    private final List<Register> given;

    /**
     * A program and what it said of itself when it was asked for a digest.
     *
     * @param command how it is started
     * @param hello what it says
     */
    public record Program(PipeCommand command, PipeHello hello) {
        /** Starts it once. */
        public static Program of(PipeCommand command) {
            return new Program(command, PipeProgram.tryOut(command, true));
        }
    }

    /**
     * What came of it.
     *
     * @param scenario that was played
     * @param ticks that both were given
     * @param isDigested whether every tick was compared by digest; else by the registers
     * @param parting where they part; null for nowhere
     */
    public record Result(
            Scenario scenario, long ticks, boolean isDigested, @Nullable Parting parting) {}

    /**
     * Where two gauges part.
     *
     * @param atMillis simulated time
     * @param tick how many ticks of the run came before it, itself included
     * @param isExact whether it is the first tick; else only the minute that ends there is known
     * @param what in one sentence
     * @param registers all that both give, with both values
     * @param inputs what went into the gauge last, oldest first
     */
    public record Parting(
            long atMillis,
            long tick,
            boolean isExact,
            String what,
            List<Difference.Pair> registers,
            List<Step> inputs) {}

    private LockStep(Scenario scenario, long seed, @Nullable Program first, Program second) {
        this.scenario = scenario;
        this.seed = seed;
        this.first = first;
        this.second = second;
        PipeHello hello = second.hello();
        PipeHello other = first == null ? hello : first.hello();
        // Digests over different spans say nothing of each other.
        folds =
                hello.digest()
                        && other.digest()
                        && hello.restartByMessage() == other.restartByMessage();
        foldsEachLife = !hello.restartByMessage();
        given = hello.registers().stream().filter(other.registers()::contains).toList();
        wholeTables = given.size() == Registers.COUNT;
    }

    /**
     * Plays a scenario that has a gauge of kind core.
     *
     * @param scenario which
     * @param seed of every random stream
     * @param first program on the first side; null for the core
     * @param second program on the second side
     * @throws PipeFailure when a program does not keep to the protocol
     */
    public static Result of(Scenario scenario, long seed, @Nullable Program first, Program second) {
        LockStep it = new LockStep(scenario, seed, first, second);
        return it.folds ? it.byDigest() : it.byTicks(0, scenario.durationMillis());
    }

    private Side side(@Nullable Program program, boolean keepsInputs) {
        return new Side(
                scenario,
                seed,
                program == null ? null : program.command(),
                folds,
                foldsEachLife,
                keepsInputs);
    }

    private Result byDigest() {
        Result coarse;
        try (Side a = side(first, false);
                Side b = side(second, false)) {
            coarse = play(a, b, MINUTE_MILLIS, 0, scenario.durationMillis());
        }
        Parting parting = coarse.parting();
        if (parting == null) {
            return coarse;
        }
        long atMillis = parting.atMillis();
        long tickMillis = scenario.tickMillis();
        Result exact = byTicks(Math.max(0, atMillis - MINUTE_MILLIS - tickMillis), atMillis);
        // A program that only differs when it is given many ticks at once is found all the same.
        return exact.parting() == null ? coarse : exact;
    }

    private Result byTicks(long fromMillis, long toMillis) {
        try (Side a = side(first, true);
                Side b = side(second, true)) {
            return play(a, b, scenario.tickMillis(), fromMillis, toMillis);
        }
    }

    /** Plays both, and looks at both from a moment on. */
    private Result play(Side a, Side b, long stepMillis, long fromMillis, long toMillis) {
        try {
            a.rig().begin();
            b.rig().begin();
            boolean isExact = stepMillis == scenario.tickMillis();
            Parting parting = fromMillis == 0 ? look(a, b, isExact) : null;
            while (parting == null && a.rig().timeMillis() < toMillis) {
                long now = a.rig().timeMillis();
                long next = now < fromMillis ? now + MINUTE_MILLIS : now + stepMillis;
                next = now < fromMillis ? Math.min(next, fromMillis) : Math.min(next, toMillis);
                a.rig().advanceTo(next);
                b.rig().advanceTo(next);
                parting = next < fromMillis ? null : look(a, b, isExact);
            }
            boolean isOver = a.rig().timeMillis() >= scenario.durationMillis();
            if (parting == null && isOver) {
                parting = lookAtTheEnd(a, b, isExact);
                a.rig().end();
                b.rig().end();
            }
            return new Result(scenario, a.rig().ticks(), folds, parting);
        } catch (PipeFailure e) {
            throw e.with("simulated time: " + Figures.moment(b.rig().timeMillis()));
        }
    }

    private @Nullable Parting lookAtTheEnd(Side a, Side b, boolean isExact) {
        return wholeTables && a.rig().digest() != b.rig().digest()
                ? parting(a, b, isExact, "the digests of the two runs differ")
                : null;
    }

    private @Nullable Parting look(Side a, Side b, boolean isExact) {
        if (a.hasPower() != b.hasPower()) {
            return parting(
                    a,
                    b,
                    isExact,
                    "power was cut on the %s side only: it used its memory at another moment"
                            .formatted(a.hasPower() ? "second" : "first"));
        }
        if (a.hasPower()) {
            List<Difference.Pair> pairs = pairs(a, b);
            long unequal = pairs.stream().filter(Difference.Pair::differs).count();
            if (unequal > 0) {
                return parting(a, b, isExact, Pairs.unequal(unequal));
            }
        }
        if (a.toldMark() != b.toldMark()) {
            return parting(
                    a,
                    b,
                    isExact,
                    "they announced or answered different things; last %s and %s"
                            .formatted(a.lastTold(), b.lastTold()));
        }
        if (a.memoryMark() != b.memoryMark()) {
            return parting(a, b, isExact, "they asked different things of their memory");
        }
        boolean isFolded = !folds || (a.offMark() == b.offMark() && sameDigest(a, b));
        return isFolded
                ? null
                : parting(
                        a,
                        b,
                        isExact,
                        "the digests of all ticks differ: a register differed on the way");
    }

    private static boolean sameDigest(Side a, Side b) {
        return !a.hasPower() || a.digest() == b.digest();
    }

    private Parting parting(Side a, Side b, boolean isExact, String what) {
        return new Parting(
                a.rig().timeMillis(), a.rig().ticks(), isExact, what, pairs(a, b), a.inputs());
    }

    private List<Difference.Pair> pairs(Side a, Side b) {
        if (a.hasPower() && b.hasPower()) {
            return Pairs.of(given, a.registers(), b.registers(), a.device(), b.device());
        }
        return List.of();
    }
}
