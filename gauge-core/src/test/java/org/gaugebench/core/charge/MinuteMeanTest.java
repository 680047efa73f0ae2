package org.gaugebench.core.charge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The minute's figures: exact means, and what they do when a minute is dropped. */
class MinuteMeanTest {
    private final MinuteMean minute = new MinuteMean();

    @Test
    void theMeanWeighsByTime() {
        minute.add(1_000_000, 14_000_000, 45_000);
        minute.add(-1_000_000, 12_000_000, 15_000);
        minute.close();
        assertEquals(500_000, minute.meanMicroamps());
        assertEquals(13_500_000, minute.meanMicrovolts());
        assertEquals(12_000_000, minute.lowestMicrovolts());
        assertEquals(14_000_000, minute.highestMicrovolts());
        assertEquals(30_000_000_000L, minute.nanocoulombs());
    }

    @Test
    void halvesOfTheMeanCurrentGoAwayFromZero() {
        minute.add(1, 0, 30_000);
        minute.add(0, 0, 30_000);
        minute.close();
        assertEquals(1, minute.meanMicroamps());
        minute.add(-1, 0, 30_000);
        minute.add(0, 0, 30_000);
        minute.close();
        assertEquals(-1, minute.meanMicroamps());
        minute.add(-1, 0, 29_999);
        minute.add(0, 0, 30_001);
        minute.close();
        assertEquals(0, minute.meanMicroamps());
    }

    @Test
    void aMinuteHasSixtyThousandMilliseconds() {
        assertEquals(60_000, minute.millisLeft());
        minute.add(0, 0, 59_999);
        assertEquals(1, minute.millisLeft());
        assertEquals(59_999, minute.millis());
        minute.add(0, 0, 1);
        minute.close();
        assertEquals(60_000, minute.millisLeft());
    }

    @Test
    void aDroppedMinuteLeavesNoTraceAndTheLastOneStands() {
        minute.add(2_000_000, 13_000_000, 60_000);
        minute.close();
        minute.add(9_000_000, 1_000_000, 30_000);
        minute.abandon();
        assertEquals(2_000_000, minute.meanMicroamps());
        assertEquals(13_000_000, minute.lowestMicrovolts());
        minute.add(-1_000_000, 12_000_000, 60_000);
        minute.close();
        assertEquals(-1_000_000, minute.meanMicroamps());
        assertEquals(12_000_000, minute.lowestMicrovolts());
        assertEquals(12_000_000, minute.highestMicrovolts());
    }

    @Test
    void theEndsOfTheRangeHold() {
        minute.add(-Integer.MAX_VALUE, 100_000_000, 60_000);
        minute.close();
        assertEquals(-Integer.MAX_VALUE, minute.meanMicroamps());
        assertEquals(100_000_000, minute.meanMicrovolts());
        assertEquals(-60_000L * Integer.MAX_VALUE, minute.nanocoulombs());
    }
}
