package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The oracle is StrictMath, which gives the same digits on every machine. */
class Log2TableTest {
    /** Interpolation 2.75e-6, cut mantissa 1e-9, rounding down 6e-8. */
    private static final double LOGARITHM_TOLERANCE = 3e-6;

    /** Interpolation 1.9e-6, rounding down 6e-8. */
    private static final double POWER_TOLERANCE = 2e-6;

    @Test
    void powersOfTwoAreExactBothWays() {
        for (int exponent = 0; exponent < 63; exponent++) {
            assertEquals(exponent << 24, Log2Table.log2Q24(1L << exponent));
        }
        for (int exponent = -24; exponent <= 37; exponent++) {
            assertEquals(1L << (24 + exponent), Log2Table.exp2Q24(exponent * (1 << 24)));
        }
    }

    @Test
    void everyTableEntryIsTheRoundedLogarithm() {
        // At an entry there is no interpolation: what is left is the cut from 30 to 24 bits.
        for (int i = 0; i < 256; i++) {
            double exact = StrictMath.log(1 + i / 256.0) / StrictMath.log(2) * (1 << 24);
            assertEquals(exact, Log2Table.log2Q24(256 + i) - (8 << 24), 1.1);
        }
    }

    @Test
    void everyTableEntryIsTheRoundedPower() {
        for (int i = 0; i < 256; i++) {
            double exact = StrictMath.pow(2, i / 256.0) * 0x1p36;
            // Read with 36 fraction bits: 30 from the table, so half a table unit is 32.
            assertEquals(exact, (double) Log2Table.exp2Q24((12 << 24) + (i << 16)), 33);
        }
    }

    @Test
    void theLogarithmIsWithinItsToleranceEverywhere() {
        double worst = 0;
        for (long value = 1; value < 1L << 62; value += 1 + value / 997) {
            double exact = StrictMath.log((double) value) / StrictMath.log(2);
            worst = Math.max(worst, Math.abs(Log2Table.log2Q24(value) / 0x1p24 - exact));
        }
        assertTrue(worst <= LOGARITHM_TOLERANCE, "worst " + worst);
    }

    @Test
    void thePowerIsWithinItsToleranceFromOneUp() {
        double worst = 0;
        for (long exponent = 0; exponent < 37L << 24; exponent += 9_973) {
            double exact = StrictMath.pow(2, exponent / 0x1p24);
            double shown = Log2Table.exp2Q24((int) exponent) / 0x1p24;
            worst = Math.max(worst, Math.abs(shown / exact - 1));
        }
        assertTrue(worst <= POWER_TOLERANCE, "worst " + worst);
    }

    @Test
    void whatLiesOutsideTheRangeIsClipped() {
        assertEquals(0, Log2Table.log2Q24(0));
        assertEquals(0, Log2Table.log2Q24(Long.MIN_VALUE));
        assertEquals(63 << 24, Log2Table.log2Q24(Long.MAX_VALUE), 64);
        assertEquals(0, Log2Table.exp2Q24(Integer.MIN_VALUE));
        assertEquals(1L << 61, Log2Table.exp2Q24(Integer.MAX_VALUE));
    }

    @Test
    void theNaturalLogarithmOfTwoIsRounded() {
        assertEquals(Math.round(StrictMath.log(2) * (1 << 24)), Log2Table.LN2_Q24);
    }
}
