package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.function.LongToIntFunction;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * The four loads on which ways of smoothing differ, with 60 Ah left: a step up, a step down, a
 * refrigerator and a kettle. Common practice, no source; the times for the single pole of 3 min
 * (394 s) and the window of 30 min (1599 s) were computed apart from this code, beforehand.
 */
class LoadFilterReferenceTest {
    private static final int SETTLED = 7_200;
    private static final int HOUR = 3_600;
    private static final int NEVER = -1;

    private static int stepUp(long second) {
        return second < SETTLED ? 2_000_000 : 20_000_000;
    }

    private static int stepDown(long second) {
        return second < SETTLED ? 20_000_000 : 2_000_000;
    }

    private static int fridge(long second) {
        return second % 1_800 < 600 ? 5_000_000 : 0;
    }

    private static int kettle(long second) {
        return second >= SETTLED && second < SETTLED + 240 ? 100_000_000 : 2_000_000;
    }

    /** Seconds after a moment until the current behind the hours stays within 10 % of the truth. */
    private static int secondsToSettle(
            LongToIntFunction load, int from, double truth, ToDoubleFunction<LoadRig> hours) {
        LoadRig rig = new LoadRig(load).runTo(from);
        int settled = NEVER;
        for (int t = 1; t <= 3 * HOUR; t++) {
            boolean within = Math.abs(truth / hours.applyAsDouble(rig.runTo(from + t)) - 1) <= 0.1;
            if (!within) {
                settled = NEVER;
            } else if (settled == NEVER) {
                settled = t;
            }
        }
        return settled;
    }

    /** Lowest and highest hours between two moments. */
    private static double[] range(
            LongToIntFunction load, int from, int until, ToDoubleFunction<LoadRig> hours) {
        LoadRig rig = new LoadRig(load).runTo(from);
        double[] range = {Double.MAX_VALUE, 0};
        for (int t = from + 1; t <= until; t++) {
            double now = hours.applyAsDouble(rig.runTo(t));
            range[0] = Math.min(range[0], now);
            range[1] = Math.max(range[1], now);
        }
        return range;
    }

    @Test
    void aStepUpShowsWithinAMinute() {
        int seconds =
                secondsToSettle(LoadFilterReferenceTest::stepUp, SETTLED, 3.0, LoadRig::hours);
        assertTrue(seconds != NEVER && seconds <= 60, "seconds " + seconds);
    }

    @Test
    void aStepDownShowsWithinFourMinutes() {
        int seconds =
                secondsToSettle(LoadFilterReferenceTest::stepDown, SETTLED, 30.0, LoadRig::hours);
        assertTrue(seconds != NEVER && seconds <= 240, "seconds " + seconds);
    }

    @Test
    void aRefrigeratorIsAveragedAfterAnHour() {
        double[] hours = range(LoadFilterReferenceTest::fridge, HOUR, 6 * HOUR, LoadRig::hours);
        assertEquals(36, hours[0], 36 * 0.15);
        assertEquals(36, hours[1], 36 * 0.15);
    }

    @Test
    void aRefrigeratorThatIsOffAtFirstIsAveragedAfterAnHour() {
        for (int phase = 0; phase < 1_800; phase += 97) {
            int shift = phase;
            double[] hours = range(t -> fridge(t + shift), HOUR, 3 * HOUR, LoadRig::hours);
            assertEquals(36, hours[0], 36 * 0.15, "phase " + phase);
            assertEquals(36, hours[1], 36 * 0.15, "phase " + phase);
        }
    }

    @Test
    void aKettleShowsAndIsForgotten() {
        double atItsFourthMinute =
                new LoadRig(LoadFilterReferenceTest::kettle).runTo(SETTLED + 235).hours();
        assertEquals(0.6, atItsFourthMinute, 0.06);
        // Fast pole from 100 A into the old envelope: 15 slots of 5 s; 45 s in it; one slot spare.
        int seconds =
                secondsToSettle(
                        LoadFilterReferenceTest::kettle, SETTLED + 240, 30.0, LoadRig::hours);
        assertTrue(seconds != NEVER && seconds <= 125, "seconds " + seconds);
    }

    @Test
    void theComparedFiltersAreTheOnesOfTheTable() {
        // Whole seconds, and a sum in double that meets its limit exactly: two seconds.
        assertEquals(
                394,
                secondsToSettle(LoadFilterReferenceTest::stepUp, SETTLED, 3.0, LoadRig::poleHours),
                2);
        assertEquals(
                1_599,
                secondsToSettle(
                        LoadFilterReferenceTest::stepUp, SETTLED, 3.0, LoadRig::windowHours),
                2);
        assertEquals(
                807,
                secondsToSettle(
                        LoadFilterReferenceTest::stepDown, SETTLED, 30.0, LoadRig::poleHours),
                2);
        assertEquals(
                1_780,
                secondsToSettle(
                        LoadFilterReferenceTest::stepDown, SETTLED, 30.0, LoadRig::windowHours),
                2);
    }

    @Test
    void printsTheTable() {
        StringBuilder table = new StringBuilder(600);
        table.append("60 Ah left          | fridge, 36 h true | 2->20 A | 20->2 A | kettle\n");
        line(table, "instant", LoadRig::instantHours);
        line(table, "single pole 3 min", LoadRig::poleHours);
        line(table, "window 30 min", LoadRig::windowHours);
        line(table, "aware of recurrence", LoadRig::hours);
        System.out.println(table);
        assertTrue(table.indexOf("NaN") < 0);
    }

    private static void line(StringBuilder table, String name, ToDoubleFunction<LoadRig> hours) {
        double[] fridge = range(LoadFilterReferenceTest::fridge, HOUR, 6 * HOUR, hours);
        table.append(
                String.format(
                        Locale.ROOT,
                        "%-19s | %6.1f..%7.1f h | %5d s | %5d s | %5.2f h at 60 s, back in %d s%n",
                        name,
                        fridge[0],
                        fridge[1],
                        secondsToSettle(LoadFilterReferenceTest::stepUp, SETTLED, 3.0, hours),
                        secondsToSettle(LoadFilterReferenceTest::stepDown, SETTLED, 30.0, hours),
                        hours.applyAsDouble(
                                new LoadRig(LoadFilterReferenceTest::kettle).runTo(SETTLED + 60)),
                        secondsToSettle(
                                LoadFilterReferenceTest::kettle, SETTLED + 240, 30.0, hours)));
    }
}
