package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Edges of the bare arithmetic, by hand. */
class FixedMathTest {
    @ParameterizedTest
    @CsvSource({"1, 2, 1", "-1, 2, -1", "0, 7, 0", "6, 4, 2", "-6, 4, -2", "5, 4, 1", "-5, 4, -1"})
    void divisionRoundsHalvesAwayFromZero(long numerator, long denominator, long expected) {
        assertEquals(expected, FixedMath.divideHalfAwayFromZero(numerator, denominator));
    }

    @Test
    void divisionHoldsAtTheEndsOfItsRange() {
        long largest = 1L << 62;
        assertEquals(1, FixedMath.divideHalfAwayFromZero(largest, largest));
        assertEquals(1, FixedMath.divideHalfAwayFromZero(largest / 2, largest));
        assertEquals(0, FixedMath.divideHalfAwayFromZero(largest / 2 - 1, largest));
        assertEquals(-1, FixedMath.divideHalfAwayFromZero(-largest / 2, largest));
        assertEquals(0, FixedMath.divideHalfAwayFromZero(-largest / 2 + 1, largest));
        assertEquals(-largest, FixedMath.divideHalfAwayFromZero(-largest, 1));
    }

    @Test
    void narrowingClampsSymmetrically() {
        assertEquals(Integer.MAX_VALUE, FixedMath.clampToInt(1L << 31));
        assertEquals(Integer.MAX_VALUE, FixedMath.clampToInt(Long.MAX_VALUE));
        assertEquals(-Integer.MAX_VALUE, FixedMath.clampToInt(Integer.MIN_VALUE));
        assertEquals(-Integer.MAX_VALUE, FixedMath.clampToInt(Long.MIN_VALUE));
        assertEquals(-Integer.MAX_VALUE, FixedMath.clampToInt(-Integer.MAX_VALUE));
        assertEquals(-1, FixedMath.clampToInt(-1));
    }

    @Test
    void aFactorOfOneChangesNothingAndLeavesNothing() {
        assertEquals(-7, FixedMath.scaleQ16Floor(-7, 65_536, 0));
        assertEquals(1L << 61, FixedMath.scaleQ16Floor(1L << 61, 65_536, 0));
        assertEquals(0, FixedMath.scaleQ16Remainder(-7, 65_536, 0));
        assertEquals(65_535, FixedMath.scaleQ16Remainder(12_345, 65_536, 65_535));
    }

    @Test
    void scalingRoundsDownAlsoBelowZero() {
        assertEquals(-1, FixedMath.scaleQ16Floor(-1, 1, 0));
        assertEquals(65_535, FixedMath.scaleQ16Remainder(-1, 1, 0));
        assertEquals(0, FixedMath.scaleQ16Floor(1, 1, 0));
        assertEquals(1, FixedMath.scaleQ16Floor(1, 1, 65_535));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "2, 2", "3, 2", "4, 2", "5, 3", "9, 3", "10, 4", "999999, 1000"})
    void squareRootsRoundUp(long square, long expected) {
        assertEquals(expected, FixedMath.squareRootCeiling(square));
    }

    @Test
    void squareRootsHoldAtTheEndsOfTheirRange() {
        assertEquals(1L << 31, FixedMath.squareRootCeiling(1L << 62));
        assertEquals(1L << 31, FixedMath.squareRootCeiling((1L << 62) - 1));
        long largest = (1L << 31) - 1;
        assertEquals(largest, FixedMath.squareRootCeiling(largest * largest));
        assertEquals(largest + 1, FixedMath.squareRootCeiling(largest * largest + 1));
    }

    /** 2^62 and 2^62 is the one pair inside the range whose sum does not fit in 64 bits. */
    @Test
    void sumsSaturateAtTheEndsOfTheirRange() {
        long most = 1L << 62;
        assertEquals(most, FixedMath.saturatingAdd(most, most));
        assertEquals(most, FixedMath.saturatingAdd(most, 1));
        assertEquals(most, FixedMath.saturatingAdd(1, most));
        assertEquals(most, FixedMath.saturatingAdd(most - 1, 1));
        assertEquals(most - 1, FixedMath.saturatingAdd(most - 2, 1));
        assertEquals(-most, FixedMath.saturatingAdd(-most, -most));
        assertEquals(-most, FixedMath.saturatingAdd(-1, -most));
        assertEquals(-most + 1, FixedMath.saturatingAdd(-most + 2, -1));
        assertEquals(0, FixedMath.saturatingAdd(most, -most));
    }

    @Test
    void productsSaturateAtTheEndOfTheirRange() {
        long most = 1L << 62;
        assertEquals(0, FixedMath.saturatingProduct(0, Long.MAX_VALUE));
        assertEquals(0, FixedMath.saturatingProduct(Long.MAX_VALUE, 0));
        assertEquals(most, FixedMath.saturatingProduct(1, Long.MAX_VALUE));
        assertEquals(most, FixedMath.saturatingProduct(Long.MAX_VALUE, 1));
        assertEquals(most, FixedMath.saturatingProduct(1L << 31, 1L << 31));
        assertEquals(
                ((1L << 31) - 1) * (1L << 31),
                FixedMath.saturatingProduct((1L << 31) - 1, 1L << 31));
        assertEquals(6, FixedMath.saturatingProduct(2, 3));
    }
}
