package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class RateModelProperties {
    private static final long LARGEST_CHARGE = 1L << 62;

    private static RateModel model(long capacity, int hours, int exponent) {
        return new RateModel(
                capacity, hours, exponent, new TemperatureCurve(840_000, 712_000, 478_000));
    }

    @Property
    void usableChargeIsNeverNegativeNorMoreThanTheCharge(
            @ForAll @LongRange(min = 1, max = LARGEST_CHARGE) long capacity,
            @ForAll int hours,
            @ForAll int exponent,
            @ForAll @LongRange(min = Long.MIN_VALUE, max = LARGEST_CHARGE) long charge,
            @ForAll int current,
            @ForAll int millicelsius) {
        long usable =
                model(capacity, hours, exponent).usableNanocoulombs(charge, current, millicelsius);
        assertTrue(usable >= 0 && usable <= Math.max(0, charge), "usable " + usable);
    }

    @Property
    void usableChargeNeverFallsAsTheChargeRises(
            @ForAll @LongRange(min = 0, max = LARGEST_CHARGE) long charge,
            @ForAll @LongRange(min = 0, max = LARGEST_CHARGE) long other,
            @ForAll int current,
            @ForAll int millicelsius) {
        RateModel model = model(360_000_000_000_000L, 20, 1_250_000);
        assertTrue(
                model.usableNanocoulombs(Math.min(charge, other), current, millicelsius)
                        <= model.usableNanocoulombs(
                                Math.max(charge, other), current, millicelsius));
    }

    @Property
    void theFactorNeverFallsAsTheDischargeGrows(
            @ForAll @IntRange(min = Integer.MIN_VALUE, max = 0) int current,
            @ForAll @IntRange(min = Integer.MIN_VALUE, max = 0) int other,
            @ForAll @IntRange(min = 1_000_000, max = 2_000_000) int exponent) {
        RateModel model = model(360_000_000_000_000L, 20, exponent);
        assertTrue(
                model.factorQ24(Math.min(current, other))
                        >= model.factorQ24(Math.max(current, other)));
        assertTrue(model.factorQ24(current) >= 1 << 24);
    }

    /** The split product equals the whole one, worked out without a width. */
    @Property
    void theSplitProductLosesNothing(
            @ForAll @LongRange(min = 1, max = LARGEST_CHARGE) long capacity,
            @ForAll @IntRange(min = -20_000, max = 25_000) int millicelsius) {
        TemperatureCurve curve = new TemperatureCurve(840_000, 712_000, 478_000);
        RateModel model = new RateModel(capacity, 1, 1_000_000, curve);
        long partQ30 = (1L << 30) * curve.partsPerMillion(millicelsius) / 1_000_000;
        BigInteger whole =
                BigInteger.valueOf(capacity).multiply(BigInteger.valueOf(partQ30)).shiftRight(30);
        assertEquals(
                BigInteger.valueOf(capacity).subtract(whole),
                BigInteger.valueOf(model.behindNanocoulombs(-1, millicelsius)));
    }
}
