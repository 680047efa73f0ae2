package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeCheck;
import org.junit.jupiter.api.Test;

/**
 * Which mistakes make what is shown jump although nothing tells of it: whoever looks once a minute
 * and at events misses nothing of the others.
 */
class UntoldJumpProperties {
    private static final long NANOCOULOMBS_PER_COUNT_MILLI = 1_000;
    private static final int TICK_MILLIS = 1_000;

    /** Peukert's law of exponent 1.2 counts 90 A on a rated 5 A as 18^0.2 = 1.79 times as much. */
    private static final int MOST_WEIGHT = 2;

    /** A reading whose lowest four bits are cut off is less by up to so much. */
    private static final long CUT_COUNTS = 15;

    /** The last place of a 32-bit float near 360 000 As is 1/32 As. */
    private static final long FLOAT_PLACE_NANOCOULOMBS = 31_250_000;

    /** One gauge, held tick by tick against the most that can have flowed. */
    private static final class Watched {
        private final Bench bench;
        private int lastCounts;

        Watched(Bench bench, double percent) {
            this.bench = bench.declare(percent);
        }

        /** Whether this tick moved the figure by more than it can have counted, untold. */
        boolean jumps(int counts, int millis) {
            long before = bench.read().remainingNanocoulombs;
            int events = bench.events.size();
            bench.counts(counts, millis);
            long moved = Math.abs(bench.read().remainingNanocoulombs - before);
            long most = Math.max(Math.abs(counts), Math.abs(lastCounts)) + CUT_COUNTS;
            lastCounts = counts;
            long flowed = most * Math.max(TICK_MILLIS, millis) * NANOCOULOMBS_PER_COUNT_MILLI;
            return bench.events.size() == events
                    && moved > MOST_WEIGHT * flowed + FLOAT_PLACE_NANOCOULOMBS;
        }
    }

    private static Watched watched(double percent, int beginMillis, Mistake... mistakes) {
        return new Watched(
                new Bench(Bench.settings().build(), TICK_MILLIS, beginMillis, mistakes), percent);
    }

    /** Those that one gauge can make together, in the order given. */
    private static Set<Mistake> together(List<Mistake> wanted) {
        Set<Mistake> set = EnumSet.noneOf(Mistake.class);
        for (Mistake each : wanted) {
            set.add(each);
            if (each.jumpsUntold() || !MistakeCheck.problems(set).isEmpty()) {
                set.remove(each);
            }
        }
        return set;
    }

    @Property(tries = 2_000)
    void noOtherMistakesMoveTheFigureByMoreThanFlowsUntold(
            @ForAll @Size(max = 6) List<Mistake> wanted,
            @ForAll int beginMillis,
            @ForAll @IntRange(min = 0, max = 100) int percent,
            @ForAll @Size(min = 1, max = 60)
                    List<@IntRange(min = -90_000, max = 90_000) Integer> counts,
            @ForAll @IntRange(min = 1, max = 90_000) int gapMillis) {
        Set<Mistake> made = together(wanted);
        Watched watched = watched(percent, beginMillis, made.toArray(new Mistake[0]));
        for (int i = 0; i < counts.size(); i++) {
            watched.bench.volts(11_000 + Math.floorMod(counts.get(i), 4_000));
            boolean jumped = watched.jumps(counts.get(i), i % 7 == 3 ? gapMillis : TICK_MILLIS);
            assertEquals(false, jumped, () -> made + " at " + counts);
        }
    }

    @Test
    void aClockTakenAsIfItNeverWrappedJumps() {
        assertTrue(watched(50, -500, Mistake.MILLISECOND_WRAP).jumps(-10_000, TICK_MILLIS));
    }

    @Test
    void aNegativeCodeReadAsAnUnsignedOneJumps() {
        assertTrue(watched(50, 0, Mistake.SIGN_EXTENSION).jumps(-100, TICK_MILLIS));
    }

    /** 2^31 mAs are 596.5 Ah: 59.65 % of this battery. */
    @Test
    void asManyMilliampSecondsAsThirtyTwoBitsHoldAreAJump() {
        Watched large =
                new Watched(
                        new Bench(
                                Bench.settings().set(Setting.CAPACITY, 1_000_000).build(),
                                Mistake.OVERFLOW_32_BIT),
                        59.652);
        boolean jumped = false;
        for (int i = 0; i < 60; i++) {
            jumped |= large.jumps(90_000, TICK_MILLIS);
        }
        assertTrue(jumped);
    }

    @Test
    void aLostSignJumpsWhenChargingBegins() {
        Watched lost = watched(50, 0, Mistake.LOST_SIGN);
        for (int i = 0; i < 60; i++) {
            assertEquals(false, lost.jumps(-10_000, TICK_MILLIS));
        }
        assertTrue(lost.jumps(10, TICK_MILLIS));
    }

    /** Each has its test above. */
    @Test
    void thereAreFour() {
        assertEquals(
                EnumSet.of(
                        Mistake.MILLISECOND_WRAP,
                        Mistake.SIGN_EXTENSION,
                        Mistake.OVERFLOW_32_BIT,
                        Mistake.LOST_SIGN),
                Arrays.stream(Mistake.values())
                        .filter(Mistake::jumpsUntold)
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Mistake.class))));
    }
}
