package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Pause, run back, start again (rule F6). */
class HoldTimerTest {
    private final HoldTimer hold = new HoldTimer();

    private void inside(int minutes) {
        for (int i = 0; i < minutes; i++) {
            hold.inside();
        }
    }

    private void outside(int minutes) {
        for (int i = 0; i < minutes; i++) {
            hold.outside();
        }
    }

    @Test
    void countsMinutesInside() {
        inside(7);
        assertEquals(7, hold.heldMinutes());
    }

    @Test
    void aGapOfTwoMinutesOnlyPauses() {
        inside(30);
        outside(2);
        assertEquals(30, hold.heldMinutes());
        inside(1);
        assertEquals(31, hold.heldMinutes());
    }

    @Test
    void fromTheThirdMinuteOnItRunsBackMinuteForMinute() {
        inside(30);
        outside(3);
        assertEquals(29, hold.heldMinutes());
        outside(11);
        assertEquals(18, hold.heldMinutes());
    }

    @Test
    void theFifteenthMinuteStartsAgain() {
        inside(30);
        outside(14);
        assertEquals(18, hold.heldMinutes());
        outside(1);
        assertEquals(0, hold.heldMinutes());
    }

    @Test
    void aMinuteInsideEndsTheGap() {
        inside(30);
        outside(2);
        inside(1);
        outside(2);
        assertEquals(31, hold.heldMinutes());
    }

    @Test
    void neverHoldsLessThanNothing() {
        inside(1);
        outside(10);
        assertEquals(0, hold.heldMinutes());
    }

    @Test
    void aResetForgetsTheGapToo() {
        inside(3);
        outside(14);
        hold.reset();
        inside(1);
        outside(2);
        assertEquals(1, hold.heldMinutes());
    }

    /** A pump of a minute in ten: nine held for one lost, where a strict hold never ends. */
    @Test
    void aPumpEveryTenMinutesCostsItsOwnMinutesOnly() {
        for (int i = 0; i < 6; i++) {
            inside(9);
            outside(1);
        }
        assertEquals(54, hold.heldMinutes());
    }
}
