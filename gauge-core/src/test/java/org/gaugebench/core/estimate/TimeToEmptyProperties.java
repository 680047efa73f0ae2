package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.gaugebench.core.port.EstimateState;

class TimeToEmptyProperties {
    private static final int LONGEST = 5_940;

    private static TimeToEmpty answer(long charge, int current, long keptBack, RateModel model) {
        LoadFilter filter = new LoadFilter(360_000_000_000_000L, 30);
        filter.addMinute(current);
        EstimateInput input = new EstimateInput();
        input.known = true;
        input.chargeNanocoulombs = charge;
        input.lowNanocoulombs = charge;
        input.highNanocoulombs = charge;
        input.presentMicroamps = current;
        TimeToEmpty time = new TimeToEmpty(1, LONGEST, keptBack, model);
        time.update(input, filter);
        return time;
    }

    private static RateModel rate() {
        return new RateModel(
                360_000_000_000_000L, 20, 1_250_000, new TemperatureCurve(840_000, 712_000, 1));
    }

    @Property
    void neverNegativeNeverAboveTheLongestForAnyChargeAndCurrent(
            @ForAll @LongRange(min = Long.MIN_VALUE / 2, max = Long.MAX_VALUE / 2) long charge,
            @ForAll int current,
            @ForAll @LongRange(min = 0, max = Long.MAX_VALUE / 2) long keptBack) {
        TimeToEmpty time = answer(charge, current, keptBack, rate());
        for (int minutes : new int[] {time.minutes(), time.atThisLoad().minutes()}) {
            assertTrue(minutes >= 0 && minutes <= LONGEST, "minutes " + minutes);
        }
        if (current < -1) {
            assertTrue(
                    time.state() == EstimateState.ESTIMATE
                            || time.state() == EstimateState.MORE_THAN);
        }
    }

    /** Without a rate the answer is the exact quotient, held to the longest time. */
    @Property
    void equalsTheQuotientWorkedOutWithoutAWidth(
            @ForAll @LongRange(min = 0, max = 1L << 60) long charge,
            @ForAll @IntRange(min = -Integer.MAX_VALUE, max = -2) int current) {
        BigInteger minutes =
                BigInteger.valueOf(charge)
                        .divide(BigInteger.valueOf(-(long) current * 60_000))
                        .min(BigInteger.valueOf(LONGEST));
        TimeToEmpty time = answer(charge, current, 0, RateModel.none());
        assertEquals(minutes.intValueExact(), time.minutes());
    }

    @Property
    void neverFallsAsTheChargeRises(
            @ForAll @LongRange(min = 0, max = 1L << 56) long charge,
            @ForAll @LongRange(min = 0, max = 1L << 56) long other,
            @ForAll @IntRange(min = -900_000_000, max = -100) int current) {
        assertTrue(
                answer(Math.min(charge, other), current, 1L << 40, rate()).minutes()
                        <= answer(Math.max(charge, other), current, 1L << 40, rate()).minutes());
    }

    @Property
    void aHeavierLoadNeverLastsLonger(
            @ForAll @LongRange(min = 0, max = 1L << 56) long charge,
            @ForAll @IntRange(min = -900_000_000, max = -100) int current,
            @ForAll @IntRange(min = -900_000_000, max = -100) int other) {
        assertTrue(
                answer(charge, Math.min(current, other), 0, rate()).minutes()
                        <= answer(charge, Math.max(current, other), 0, rate()).minutes());
    }
}
