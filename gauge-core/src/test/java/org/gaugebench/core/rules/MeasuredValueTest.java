package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Two agreeing results, a quarter of the way, a longest step, and limits (rules C4 and C5). */
class MeasuredValueTest {
    /** Declared 1000, 500 to 1100, steps of at most 50, agreement within 50. */
    private final MeasuredValue value = new MeasuredValue(1_000, 500, 1_100, 50, 50);

    @Test
    void oneResultMovesNothing() {
        assertFalse(value.offer(900));
        assertEquals(0, value.measured());
        assertEquals(900, value.candidate());
    }

    @Test
    void twoAgreeingResultsMoveAQuarterOfTheWayToTheirMean() {
        value.offer(920);
        assertTrue(value.offer(880));
        assertEquals(975, value.measured());
    }

    @Test
    void resultsFurtherApartDoNotAgree() {
        value.offer(900);
        assertFalse(value.offer(849));
        assertTrue(value.offer(899));
    }

    @Test
    void theStepIsLimitedBothWays() {
        value.offer(600);
        assertTrue(value.offer(600));
        assertEquals(950, value.measured());
        MeasuredValue up = new MeasuredValue(1_000, 500, 2_000, 50, 50);
        up.offer(1_600);
        up.offer(1_600);
        assertEquals(1_050, up.measured());
    }

    @Test
    void theValueStaysWithinItsLimits() {
        for (int i = 0; i < 100; i++) {
            value.offer(100);
        }
        assertEquals(500, value.measured());
        for (int i = 0; i < 100; i++) {
            value.offer(5_000);
        }
        assertEquals(1_100, value.measured());
    }

    @Test
    void forgetsOnCommand() {
        value.offer(900);
        value.offer(900);
        value.forget();
        assertEquals(0, value.measured());
        assertEquals(0, value.candidate());
        assertFalse(value.offer(900));
    }

    @Test
    void takesOverWithinItsLimits() {
        value.resume(5_000, -3);
        assertEquals(1_100, value.measured());
        assertEquals(0, value.candidate());
        value.resume(0, 900);
        assertEquals(0, value.measured());
        assertTrue(value.offer(900));
    }
}
