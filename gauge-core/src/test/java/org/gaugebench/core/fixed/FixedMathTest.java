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
}
