package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published rounding tables, negative values included. */
class FixedMathReferenceTest {
    /**
     * Rows 5.5, 2.5, 1.6, 1.1, 1.0, -1.0, -1.1, -1.6, -2.5, -5.5 of the table in the documentation
     * of {@code java.math.RoundingMode} (Java SE 17), column HALF_UP, which is half away from zero.
     */
    @ParameterizedTest
    @CsvSource({
        "55, 6", "25, 3", "16, 2", "11, 1", "10, 1", "-10, -1", "-11, -1", "-16, -2", "-25, -3",
        "-55, -6"
    })
    void divisionRoundsAsThePublishedHalfUpTable(long tenths, long expected) {
        assertEquals(expected, FixedMath.divideHalfAwayFromZero(tenths, 10));
        ScaleFactor tenth = new ScaleFactor(1, 10, 1_000);
        assertEquals(expected, tenth.apply(tenths));
    }

    /**
     * The same table's column FLOOR: what the carried Q16 scaling does, shown with a quarter, since
     * a tenth is no Q16 number: 2.75, 1.25, 0.5, -0.5, -1.25, -2.75.
     */
    @ParameterizedTest
    @CsvSource({"11, 2", "5, 1", "2, 0", "-2, -1", "-5, -2", "-11, -3"})
    void scalingRoundsAsThePublishedFloorTable(long quarters, long expected) {
        assertEquals(expected, FixedMath.scaleQ16Floor(quarters, 16_384, 0));
    }

    /**
     * Java Language Specification (Java SE 17) 15.17.2 and 15.19: division truncates toward zero,
     * an arithmetic shift takes the floor. The core relies on both, so a port must know them.
     */
    @Test
    void divisionAndShiftRoundNegativeValuesDifferently() {
        int minusSeven = Integer.parseInt("-7");
        assertEquals(-3, minusSeven / 2);
        assertEquals(-4, minusSeven >> 1);
        assertEquals(-4, Math.floorDiv(minusSeven, 2));
        assertEquals(-1, minusSeven % 2);
        assertEquals(1, Math.floorMod(minusSeven, 2));
        assertEquals(-4, FixedMath.divideHalfAwayFromZero(minusSeven, 2));
        assertEquals(-4, FixedMath.scaleQ16Floor(minusSeven, 32_768, 0));
        assertEquals(4, FixedMath.divideHalfAwayFromZero(-minusSeven, 2));
    }

    /** The same source, 15.15.4: the smallest value has no positive twin. */
    @Test
    void theSmallestValueHasNoNegativeSoNarrowingNeverGivesIt() {
        int smallest = Integer.MIN_VALUE;
        assertEquals(smallest, -smallest);
        assertEquals(Integer.MAX_VALUE, -FixedMath.clampToInt(smallest));
    }
}
