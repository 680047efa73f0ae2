package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The raw 32-bit millisecond counter at every edge it has. */
class ElapsedTimeTest {
    private final ElapsedTime clock = new ElapsedTime();

    @Test
    void theFirstValueOnlySetsTheReference() {
        assertEquals(0, clock.advance(123_456));
        assertEquals(0, clock.uptimeMillis());
        assertEquals(123_456, clock.lastClockMillis());
        assertEquals(1_000, clock.advance(124_456));
        assertEquals(1_000, clock.uptimeMillis());
    }

    @Test
    void theFirstValueMayBeAnyPattern() {
        assertEquals(0, clock.advance(Integer.MIN_VALUE));
        assertEquals(1, clock.advance(Integer.MIN_VALUE + 1));
    }

    @Test
    void theWrapAfterFortyNinePointSevenOneDaysIsAnOrdinaryTick() {
        clock.advance(-500);
        assertEquals(1_000, clock.advance(500));
        assertEquals(1_000, clock.uptimeMillis());
    }

    @Test
    void theSignChangeInTheMiddleIsAnOrdinaryTickToo() {
        clock.advance(Integer.MAX_VALUE);
        assertEquals(1, clock.advance(Integer.MIN_VALUE));
    }

    @Test
    void uptimeGoesOnAcrossManyWraps() {
        clock.advance(0);
        int raw = 0;
        for (int i = 0; i < 10; i++) {
            raw += 1 << 30;
            assertEquals(1 << 30, clock.advance(raw));
        }
        assertEquals(10L << 30, clock.uptimeMillis());
    }

    @Test
    void standingStillElapsesNothing() {
        clock.advance(7);
        assertEquals(0, clock.advance(7));
    }

    @Test
    void oneMillisecondBackIsBackwardsAndPassesNoTime() {
        clock.advance(1_000);
        assertEquals(ElapsedTime.BACKWARDS, clock.advance(999));
        assertEquals(0, clock.uptimeMillis());
        assertEquals(1, clock.advance(1_000));
    }

    @Test
    void theLongestTickIsTheLargestSixteenBitNumber() {
        assertEquals(65_535, ElapsedTime.LONGEST_TICK_MILLIS);
        clock.advance(0);
        assertEquals(65_535, clock.advance(65_535));
        assertEquals(65_536, clock.advance(131_071));
    }

    @Test
    void halfTheRangeIsBackwardsAndOneLessIsForwards() {
        clock.advance(0);
        assertEquals(Integer.MAX_VALUE, clock.advance(Integer.MAX_VALUE));
        clock.restart();
        clock.advance(0);
        assertEquals(ElapsedTime.BACKWARDS, clock.advance(Integer.MIN_VALUE));
        assertEquals(0, clock.uptimeMillis());
    }

    @Test
    void aRestartForgetsReferenceAndUptime() {
        clock.advance(0);
        clock.advance(5_000);
        clock.restart();
        assertEquals(0, clock.uptimeMillis());
        assertEquals(0, clock.advance(1));
        assertEquals(9, clock.advance(10));
    }
}
