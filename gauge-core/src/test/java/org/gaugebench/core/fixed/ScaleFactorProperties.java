package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

/** One multiplier and one shift against the exact rational. */
class ScaleFactorProperties {
    private static final long LARGEST_TERM = 1L << 62;
    private static final long LARGEST_LIMIT = 1L << 40;

    private static BigInteger big(long value) {
        return BigInteger.valueOf(value);
    }

    private static boolean fits(long numerator, long denominator, long limit) {
        return big(numerator / denominator + 1).multiply(big(limit)).bitLength() < 64;
    }

    /** Own rounding of one half, and half a unit of the multiplier times the input. */
    @Property
    void errorIsAtMostHalfAndTheMultipliersShare(
            @ForAll @LongRange(min = 1, max = LARGEST_TERM) long numerator,
            @ForAll @LongRange(min = 1, max = LARGEST_TERM) long denominator,
            @ForAll @LongRange(min = 1, max = LARGEST_LIMIT) long limit,
            @ForAll @LongRange(min = -LARGEST_LIMIT, max = LARGEST_LIMIT) long anyInput) {
        Assume.that(fits(numerator, denominator, limit));
        ScaleFactor factor = new ScaleFactor(numerator, denominator, limit);
        long input = anyInput % (limit + 1);
        BigInteger error =
                big(factor.apply(input))
                        .multiply(big(denominator))
                        .subtract(big(input).multiply(big(numerator)))
                        .abs();
        // |error| / denominator <= 1/2 + |input| / 2^(shift+1), without a fraction
        BigInteger bound =
                big(denominator)
                        .shiftLeft(factor.shift())
                        .add(big(denominator).multiply(big(Math.abs(input))));
        assertTrue(
                error.shiftLeft(factor.shift() + 1).compareTo(bound) <= 0,
                () -> "error " + error + "/" + denominator + " with shift " + factor.shift());
    }

    @Property
    void theProductNeverOverflowsAndUsesItsWidth(
            @ForAll @LongRange(min = 1, max = LARGEST_TERM) long numerator,
            @ForAll @LongRange(min = 1, max = LARGEST_TERM) long denominator,
            @ForAll @LongRange(min = 1, max = LARGEST_LIMIT) long limit) {
        Assume.that(fits(numerator, denominator, limit));
        ScaleFactor factor = new ScaleFactor(numerator, denominator, limit);
        BigInteger half = factor.shift() == 0 ? BigInteger.ZERO : big(1L << (factor.shift() - 1));
        BigInteger largest = big(factor.multiplier()).multiply(big(limit)).add(half);
        assertTrue(largest.bitLength() <= 63, "bits " + largest.bitLength());
        // One bit more would not fit, unless the shift is at its own end.
        BigInteger oneMore = big(factor.multiplier() + 1).multiply(big(limit)).shiftLeft(1);
        assertTrue(factor.shift() == 62 || oneMore.add(half.shiftLeft(1)).bitLength() >= 63);
        assertEquals(largest.shiftRight(factor.shift()).longValueExact(), factor.apply(limit));
    }

    @Property
    void isSymmetricAndClips(
            @ForAll @LongRange(min = 1, max = 1L << 40) long numerator,
            @ForAll @LongRange(min = 1, max = 1L << 40) long denominator,
            @ForAll @LongRange(min = 1, max = 1L << 22) long limit,
            @ForAll long input) {
        ScaleFactor factor = new ScaleFactor(numerator, denominator, limit);
        if (input != Long.MIN_VALUE) {
            assertEquals(-factor.apply(input), factor.apply(-input));
        }
        if (input >= limit) {
            assertEquals(factor.apply(limit), factor.apply(input));
        }
    }

    @Example
    void theSmallestInputOfAllClipsToo() {
        ScaleFactor third = new ScaleFactor(1, 3, 9);
        assertEquals(-3, third.apply(Long.MIN_VALUE));
        assertEquals(3, third.apply(Long.MAX_VALUE));
    }

    /** 2^23 - 1/4 times 2^40 is just under 2^63; rounded to 2^23 it is not. */
    @Example
    void refusesAFactorThatOnlyItsLastRoundingMakesTooLarge() {
        long fourTimesFactor = (1L << 25) - 1;
        assertThrows(
                ArithmeticException.class, () -> new ScaleFactor(fourTimesFactor, 4, 1L << 40));
        assertEquals(
                ((1L << 23) - 1) << 39,
                new ScaleFactor((1L << 23) - 1, 1, 1L << 39).apply(1L << 39));
    }

    /**
     * (2^23 + 1) / 2^43 has a fraction of 43 bits. With all of them the largest input fits 63 bits,
     * but not with the half for rounding on top: a bit less is taken, and the result is right.
     */
    @Example
    void theHalfForRoundingFitsToo() {
        long numerator = (1L << 23) + 1;
        long limit = Long.MAX_VALUE / (numerator + 1);
        ScaleFactor factor = new ScaleFactor(numerator, 1L << 43, limit);
        assertEquals(42, factor.shift());
        // Half a unit of the multiplier is worth an eighth here, and the result rounds by a half.
        long exact = big(limit).multiply(big(numerator)).shiftRight(43).longValueExact();
        assertTrue(Math.abs(factor.apply(limit) - exact) <= 1, "" + factor.apply(limit));
        assertEquals(-factor.apply(limit), factor.apply(-limit));
    }

    /** One and a half units of the last bit: the multiplier is the factor rounded half up. */
    @Example
    void theMultiplierRoundsHalfUp() {
        long limit = Long.MAX_VALUE / ((1L << 23) + 2);
        ScaleFactor factor = new ScaleFactor((1L << 23) + 1, 1L << 43, limit);
        assertEquals((1L << 22) + 1, factor.multiplier());
        assertEquals(limit, factor.inputLimit());
    }
}
