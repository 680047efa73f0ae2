package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class FallingVoltsTest {
    private final FallingVolts falling = new FallingVolts(500_000);

    @Test
    void theFirstSampleIsNeverAFall() {
        assertFalse(falling.add(Integer.MIN_VALUE, 0));
        falling.forget();
        assertFalse(falling.add(0, 65_535));
    }

    @Test
    void aFallWithinTheWindowIsSeenAtAnyTickLength() {
        for (int millis : new int[] {1, 100, 999, 1_000, 4_000, 9_000}) {
            falling.forget();
            falling.add(12_500_000, millis);
            assertTrue(falling.add(11_999_999, millis), millis + " ms");
            assertFalse(falling.add(12_000_000, millis), millis + " ms");
        }
    }

    @Test
    void whatLiesTenSecondsBackIsForgotten() {
        falling.add(12_500_000, 1_000);
        for (int i = 0; i < 9; i++) {
            assertTrue(falling.add(11_000_000, 1_000), "second " + i);
        }
        assertFalse(falling.add(11_000_000, 1_000));
    }

    @Test
    void samplesFurtherApartThanTheWindowTellNothing() {
        falling.add(12_500_000, 10_000);
        assertFalse(falling.add(1_000_000, 10_000));
    }

    @Test
    void theHighestOfASecondCounts() {
        falling.add(11_000_000, 100);
        falling.add(12_500_000, 100);
        falling.add(11_900_000, 100);
        assertTrue(falling.add(11_900_000, 1_000));
    }

    @Test
    void forgettingEmptiesTheWindow() {
        falling.add(12_500_000, 1_000);
        falling.forget();
        assertFalse(falling.add(1_000_000, 1_000));
    }
}
