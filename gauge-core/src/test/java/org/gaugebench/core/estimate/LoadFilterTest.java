package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The filter's start (rule G16). */
class LoadFilterTest {
    @Test
    void theFirstMinuteSeedsTheFilterWhole() {
        LoadFilter filter = new LoadFilter();
        assertFalse(filter.isSeeded());
        assertEquals(0, filter.microamps());
        filter.addMinute(-5_000_000);
        assertTrue(filter.isSeeded());
        assertEquals(-5_000_000, filter.microamps());
        assertEquals(-5_000_000L * 256, filter.microampsQ8());
    }

    @Test
    void aMinuteMovesTheFilterByAnEighthOfTheDifference() {
        LoadFilter filter = new LoadFilter();
        filter.addMinute(-8_000_000);
        filter.addMinute(0);
        assertEquals(-7_000_000, filter.microamps());
        filter.addMinute(1_000_000);
        assertEquals(-6_000_000, filter.microamps());
    }
}
