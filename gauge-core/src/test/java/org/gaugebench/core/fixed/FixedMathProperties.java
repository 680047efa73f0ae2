package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

/** The bare arithmetic equals arithmetic without a width. */
class FixedMathProperties {
    private static final long LARGEST_NUMERATOR = 1L << 62;
    private static final long LARGEST_SCALED = 1L << 61;

    @Property
    void divisionEqualsTheUnboundedOne(
            @ForAll @LongRange(min = -LARGEST_NUMERATOR, max = LARGEST_NUMERATOR) long numerator,
            @ForAll @LongRange(min = 1, max = LARGEST_NUMERATOR) long denominator) {
        checkDivision(numerator, denominator);
    }

    @Property
    void divisionEqualsTheUnboundedOneNearTies(
            @ForAll @LongRange(min = -1_000, max = 1_000) long numerator,
            @ForAll @LongRange(min = 1, max = 20) long denominator) {
        checkDivision(numerator, denominator);
    }

    private static void checkDivision(long numerator, long denominator) {
        BigDecimal exact =
                BigDecimal.valueOf(numerator)
                        .divide(BigDecimal.valueOf(denominator), 0, RoundingMode.HALF_UP);
        assertEquals(
                exact.longValueExact(), FixedMath.divideHalfAwayFromZero(numerator, denominator));
        assertEquals(
                -FixedMath.divideHalfAwayFromZero(numerator, denominator),
                FixedMath.divideHalfAwayFromZero(-numerator, denominator));
    }

    @Property
    void scalingAndItsRemainderLoseNothing(
            @ForAll @LongRange(min = -LARGEST_SCALED, max = LARGEST_SCALED) long value,
            @ForAll @IntRange(min = 0, max = 65_536) int factorQ16,
            @ForAll @IntRange(min = 0, max = 65_535) int carryQ16) {
        BigInteger exact =
                BigInteger.valueOf(value)
                        .multiply(BigInteger.valueOf(factorQ16))
                        .add(BigInteger.valueOf(carryQ16));
        long floor = FixedMath.scaleQ16Floor(value, factorQ16, carryQ16);
        int remainder = FixedMath.scaleQ16Remainder(value, factorQ16, carryQ16);
        assertEquals(
                exact, BigInteger.valueOf(floor).shiftLeft(16).add(BigInteger.valueOf(remainder)));
        assertTrue(remainder >= 0 && remainder <= 65_535, "remainder " + remainder);
    }

    @Property
    void clampingIsIdempotentAndStaysInside(
            @ForAll long value, @ForAll long one, @ForAll long other) {
        long low = Math.min(one, other);
        long high = Math.max(one, other);
        long clamped = FixedMath.clamp(value, low, high);
        assertTrue(clamped >= low && clamped <= high);
        assertEquals(clamped, FixedMath.clamp(clamped, low, high));
        assertTrue(value < low || value > high || clamped == value);
    }

    @Property
    void narrowingKeepsWhatFits(@ForAll long value) {
        long expected = Math.max(-Integer.MAX_VALUE, Math.min(Integer.MAX_VALUE, value));
        assertEquals(expected, FixedMath.clampToInt(value));
    }

    @Property
    void squareRootsAreTheSmallestThatReach(
            @ForAll @LongRange(min = 0, max = LARGEST_NUMERATOR) long square) {
        BigInteger root = BigInteger.valueOf(square).sqrt();
        boolean whole = root.pow(2).equals(BigInteger.valueOf(square));
        long expected = root.longValueExact() + (whole ? 0 : 1);
        assertEquals(expected, FixedMath.squareRootCeiling(square));
    }

    @Property
    void squareRootsOfSquaresAreExact(@ForAll @IntRange(min = 0) int root) {
        long square = (long) root * root;
        assertEquals(root, FixedMath.squareRootCeiling(square));
        assertEquals(root + 1L, FixedMath.squareRootCeiling(square + 1));
    }

    @Property
    void sumsEqualTheUnboundedOnesClamped(
            @ForAll @LongRange(min = -LARGEST_NUMERATOR, max = LARGEST_NUMERATOR) long one,
            @ForAll @LongRange(min = -LARGEST_NUMERATOR, max = LARGEST_NUMERATOR) long other) {
        BigInteger limit = BigInteger.valueOf(LARGEST_NUMERATOR);
        BigInteger exact = BigInteger.valueOf(one).add(BigInteger.valueOf(other));
        assertEquals(
                exact.min(limit).max(limit.negate()).longValueExact(),
                FixedMath.saturatingAdd(one, other));
    }

    @Property
    void productsEqualTheUnboundedOnesClamped(
            @ForAll @LongRange(min = 0) long one, @ForAll @LongRange(min = 0) long other) {
        BigInteger exact = BigInteger.valueOf(one).multiply(BigInteger.valueOf(other));
        assertEquals(
                exact.min(BigInteger.valueOf(LARGEST_NUMERATOR)).longValueExact(),
                FixedMath.saturatingProduct(one, other));
    }

    @Property
    void growthEqualsTheUnboundedOneRoundedUpAndClamped(
            @ForAll @LongRange(min = 0, max = LARGEST_NUMERATOR) long value,
            @ForAll @LongRange(min = 1, max = Integer.MAX_VALUE) long oldFigure,
            @ForAll @LongRange(min = 1, max = Integer.MAX_VALUE) long newFigure) {
        BigDecimal exact =
                BigDecimal.valueOf(value)
                        .multiply(BigDecimal.valueOf(newFigure))
                        .divide(BigDecimal.valueOf(oldFigure), 0, RoundingMode.CEILING);
        assertEquals(
                exact.min(BigDecimal.valueOf(LARGEST_NUMERATOR)).longValueExact(),
                FixedMath.grown(value, oldFigure, newFigure));
    }
}
