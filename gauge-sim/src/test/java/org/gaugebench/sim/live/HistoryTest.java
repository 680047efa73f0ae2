package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Buckets keep the lowest and the highest, and forget the oldest. */
class HistoryTest {
    private static final int MINUTES = 1;

    @Test
    void aSpikeIsSeenAtEveryLevelThatHoldsIt() {
        History history = new History(1);
        for (int second = 0; second < 3_600; second++) {
            history.add(second * 1_000L, new double[] {second == 3_000 ? 50 : 1}, 0);
        }
        assertEquals(50, history.highest(0, 1_500, 0));
        assertEquals(50, history.highest(MINUTES, 50, 0));
        assertEquals(1, history.lowest(MINUTES, 50, 0));
        assertEquals(1, history.highest(MINUTES, 51, 0));
    }

    @Test
    void theOldestBucketsAreForgotten() {
        History history = new History(1);
        for (int minute = 0; minute < 1_000; minute++) {
            history.add(minute * 60_000L, new double[] {minute}, 1);
        }
        assertEquals(400, history.first(MINUTES));
        assertEquals(999, history.last(MINUTES));
        assertTrue(Double.isNaN(history.lowest(MINUTES, 399, 0)));
        assertEquals(400, history.lowest(MINUTES, 400, 0));
        assertEquals(-1, history.last(0), "nothing was added to the finest level");
    }

    @Test
    void whatIsNotKnownTakesNothingAwayFromWhatIs() {
        History history = new History(2);
        history.add(0, new double[] {Double.NaN, 3}, 0);
        history.add(1, new double[] {2, Double.NaN}, 0);
        history.add(2, new double[] {Double.NaN, 4}, 0);
        assertEquals(2, history.lowest(0, 0, 0));
        assertEquals(2, history.highest(0, 0, 0));
        assertEquals(3, history.lowest(0, 0, 1));
        assertEquals(4, history.highest(0, 0, 1));
    }
}
