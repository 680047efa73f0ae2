package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** 100 A shunt: zero within 0.2 A, span points 10 A apart and steady within 2 A (Z rules). */
class ShuntAdjustmentTest {
    private static final int AMP = 1_000_000;
    private static final int LIMIT = 200_000;

    private final GaugeSettings settings = GaugeSettings.builder().build();
    private final CurrentSense sense = new CurrentSense(settings);
    private final ShuntAdjustment adjustment = new ShuntAdjustment(settings);

    private CommandOutcome zero(int microamps) {
        return adjustment.zero(microamps, microamps, microamps, sense);
    }

    private CommandOutcome span(int shown, int reference) {
        return adjustment.span(shown, shown, shown, reference);
    }

    /** 3 A taken for zero would be 72 Ah a day. */
    @Test
    void refusesAZeroWithALoadOn() {
        assertEquals(CommandOutcome.REFUSED_NOT_ZERO, zero(-3 * AMP));
        assertEquals(0, adjustment.zeroCountsQ8());
    }

    @Test
    void takesExactlyTheLimitAndNotAMicroampMore() {
        assertEquals(CommandOutcome.REFUSED_NOT_ZERO, zero(LIMIT + 1));
        assertEquals(CommandOutcome.REFUSED_NOT_ZERO, zero(-LIMIT - 1));
        assertEquals(CommandOutcome.DONE, zero(LIMIT));
        assertEquals(sense.countsQ8FromMicroamps(LIMIT), adjustment.zeroCountsQ8());
    }

    @Test
    void afterwardsTheSameCountsReadZero() {
        int counts = 300;
        int before = sense.microampsFromCounts(counts);
        assertEquals(CommandOutcome.DONE, zero(before));
        CurrentSense after = new CurrentSense(settings, adjustment.zeroCountsQ8(), 0);
        // a 256th of a count is worth one microamp here
        assertEquals(0, after.microampsFromCounts(counts), 1);
    }

    @Test
    void refusesAZeroThatMoved() {
        assertEquals(CommandOutcome.REFUSED_UNSTABLE, adjustment.zero(0, -LIMIT, LIMIT + 1, sense));
        assertEquals(CommandOutcome.DONE, adjustment.zero(0, -LIMIT, LIMIT, sense));
    }

    /** Small steps must not take away what one step may not. */
    @Test
    void zerosDoNotAddUpToALoad() {
        assertEquals(CommandOutcome.DONE, zero(-LIMIT / 2));
        assertEquals(CommandOutcome.DONE, zero(-LIMIT / 2));
        int taken = adjustment.zeroCountsQ8();
        assertEquals(CommandOutcome.REFUSED_NOT_ZERO, zero(-1_000));
        assertEquals(taken, adjustment.zeroCountsQ8());
        assertEquals(CommandOutcome.DONE, zero(LIMIT / 2));
    }

    /** An offset of 50 mA at 1 A is a gain of 5 % to one point, and of nothing to two. */
    @Test
    void twoPointsDoNotTakeAnOffsetForAGain() {
        assertEquals(CommandOutcome.FIRST_POINT_TAKEN, span(1_050_000, AMP));
        assertEquals(0, adjustment.gainPartsPerMillion());
        assertEquals(CommandOutcome.DONE, span(11_050_000, 11 * AMP));
        assertEquals(0, adjustment.gainPartsPerMillion());
    }

    /** Shows 1.02 I + 0.05 A; two points leave less than 0.1 % of the 2 %. */
    @Test
    void twoPointsFindTheGainBesideAnOffset() {
        span(1_070_000, AMP);
        assertEquals(CommandOutcome.DONE, span(21_470_000, 21 * AMP));
        assertEquals(-19_608, adjustment.gainPartsPerMillion());
        long left = 1_020_000L * (1_000_000 - 19_608) / 1_000_000;
        assertTrue(Math.abs(left - 1_000_000) < 2, "" + left);
    }

    @Test
    void theOrderOfThePointsDoesNotMatter() {
        span(21_470_000, 21 * AMP);
        span(1_070_000, AMP);
        assertEquals(-19_608, adjustment.gainPartsPerMillion());
    }

    /** 3 % and then 1 % more are 4.03 %. */
    @Test
    void gainsMultiply() {
        span(0, 0);
        assertEquals(CommandOutcome.DONE, span(10 * AMP, 10_300_000));
        span(0, 0);
        assertEquals(CommandOutcome.DONE, span(10 * AMP, 10_100_000));
        assertEquals(40_300, adjustment.gainPartsPerMillion());
    }

    @Test
    void refusesPointsTooClose() {
        span(0, 0);
        assertEquals(CommandOutcome.REFUSED_POINTS_TOO_CLOSE, span(10 * AMP - 1, 10 * AMP));
        assertEquals(CommandOutcome.FIRST_POINT_TAKEN, span(0, 0));
        assertEquals(CommandOutcome.DONE, span(-10 * AMP, -10 * AMP));
    }

    @Test
    void refusesMoreThanFivePercentEitherWay() {
        int[] references = {105_000_100, 94_999_900, 150 * AMP, -100 * AMP, Integer.MAX_VALUE};
        for (int reference : references) {
            span(0, 0);
            assertEquals(CommandOutcome.REFUSED_TOO_LARGE, span(100 * AMP, reference));
            assertEquals(0, adjustment.gainPartsPerMillion());
        }
        span(0, 0);
        assertEquals(CommandOutcome.DONE, span(100 * AMP, 95 * AMP));
        assertEquals(-50_000, adjustment.gainPartsPerMillion());
        adjustment.resume(0, 0);
        span(0, 0);
        assertEquals(CommandOutcome.DONE, span(10 * AMP, 10_500_000));
        assertEquals(50_000, adjustment.gainPartsPerMillion());
    }

    /** Z3: 3 % and 2 % are 5.06 %, and the first of them stays in force. */
    @Test
    void refusesAProductOfMoreThanFivePercent() {
        span(0, 0);
        assertEquals(CommandOutcome.DONE, span(10 * AMP, 10_300_000));
        span(0, 0);
        assertEquals(CommandOutcome.REFUSED_TOO_LARGE, span(10 * AMP, 10_200_000));
        assertEquals(30_000, adjustment.gainPartsPerMillion());
    }

    @Test
    void refusesASpanThatMovedAndKeepsTheFirstPoint() {
        span(0, 0);
        assertEquals(
                CommandOutcome.REFUSED_UNSTABLE,
                adjustment.span(10 * AMP, 9 * AMP, 11 * AMP + 1, 10_300_000));
        assertEquals(CommandOutcome.DONE, adjustment.span(10 * AMP, 9 * AMP, 11 * AMP, 10_300_000));
    }

    @Test
    void refusesAReferenceBeyondTheGaugesCurrents() {
        for (long reference : new long[] {1L << 31, -(1L << 31), Long.MAX_VALUE}) {
            assertEquals(CommandOutcome.REFUSED_OUT_OF_RANGE, adjustment.span(0, 0, 0, reference));
        }
    }

    @Test
    void aZeroBetweenTheTwoPointsDropsTheFirst() {
        span(0, 0);
        zero(1_000);
        assertEquals(CommandOutcome.FIRST_POINT_TAKEN, span(10 * AMP, 10 * AMP));
    }

    @Test
    void takesOverWhatWasSavedWithinItsRange() {
        adjustment.resume(-77, 60_000);
        assertEquals(-77, adjustment.zeroCountsQ8());
        assertEquals(50_000, adjustment.gainPartsPerMillion());
        adjustment.resume(0, -60_000);
        assertEquals(-50_000, adjustment.gainPartsPerMillion());
    }

    @Test
    void theZeroLimitFollowsItsSetting() {
        GaugeSettings wide = GaugeSettings.builder().set(Setting.ZERO_LIMIT, 50_000).build();
        ShuntAdjustment loose = new ShuntAdjustment(wide);
        assertEquals(CommandOutcome.DONE, loose.zero(5 * AMP, 5 * AMP, 5 * AMP, sense));
        assertEquals(
                CommandOutcome.REFUSED_NOT_ZERO,
                loose.zero(5 * AMP + 1, 5 * AMP + 1, 5 * AMP + 1, sense));
    }

    /** The magnitude of the smallest long is negative, and so was no larger than any limit. */
    @Test
    void refusesAReferenceThatNoCurrentCanBe() {
        long[] beyond = {Long.MIN_VALUE, Long.MAX_VALUE, 1L << 31, -(1L << 31)};
        for (long reference : beyond) {
            assertEquals(
                    CommandOutcome.REFUSED_OUT_OF_RANGE, adjustment.span(AMP, AMP, AMP, reference));
        }
        assertEquals(CommandOutcome.FIRST_POINT_TAKEN, span(AMP, -Integer.MAX_VALUE));
        ShuntAdjustment other = new ShuntAdjustment(settings);
        assertEquals(
                CommandOutcome.FIRST_POINT_TAKEN, other.span(AMP, AMP, AMP, Integer.MAX_VALUE));
    }
}
