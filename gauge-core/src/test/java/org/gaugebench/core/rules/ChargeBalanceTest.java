package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** In over out of a week, on a battery of 100 Ah, from 20 Ah on (rule D4). */
class ChargeBalanceTest {
    private static final int WEEK = 7 * Minutes.DAY;

    private final ChargeBalance balance =
            new ChargeBalance(20 * Minutes.AMP_HOUR, 100 * Minutes.AMP_HOUR);

    private boolean week(long inAmpHours, long outAmpHours) {
        balance.addMinute(inAmpHours * Minutes.AMP_HOUR);
        balance.addMinute(-outAmpHours * Minutes.AMP_HOUR);
        for (int i = 2; i < WEEK; i++) {
            balance.addMinute(0);
        }
        return balance.isOff();
    }

    @Test
    void aWeekThatBalancesIsNoFault() {
        assertFalse(week(300, 280));
    }

    /** 40 Ah a day come in past the shunt: 280 Ah out, nothing in. */
    @Test
    void aChargerPastTheShuntIsSeenWithinAWeek() {
        assertTrue(week(0, 280));
        assertFalse(week(300, 280));
    }

    /** 24 Ah a day go out past the shunt. */
    @Test
    void aLoadPastTheShuntIsSeenWithinAWeek() {
        assertTrue(week(168, 0));
    }

    @Test
    void theBatteryItselfMayHaveTakenOrGivenItsCapacity() {
        assertFalse(week(126, 20));
        assertFalse(week(0, 100));
    }

    /** 200 out allow 170 to 260 in, and a capacity on either side. */
    @Test
    void hasItsEdges() {
        assertFalse(week(70, 200));
        assertTrue(week(69, 200));
        assertFalse(week(360, 200));
        assertTrue(week(361, 200));
    }

    @Test
    void aQuietWeekSaysNothingAndKeepsTheAnswer() {
        assertTrue(week(0, 280));
        assertTrue(week(19, 19));
        assertFalse(week(20, 20));
    }

    @Test
    void judgesAtTheEndOfTheWeekOnly() {
        balance.addMinute(-280 * Minutes.AMP_HOUR);
        for (int i = 2; i < WEEK; i++) {
            balance.addMinute(0);
            assertFalse(balance.isOff());
        }
        balance.addMinute(0);
        assertTrue(balance.isOff());
    }

    @Test
    void anotherBatteryBeginsAnew() {
        assertTrue(week(0, 280));
        balance.addMinute(-500 * Minutes.AMP_HOUR);
        balance.forget();
        assertFalse(balance.isOff());
        assertEquals(false, week(100, 100));
    }

    /** A fifth of the capacity on either side is enough to judge by. */
    @Test
    void aFifthInOrAFifthOutIsNoQuietWeek() {
        assertTrue(week(0, 280));
        assertFalse(week(10, 20));
        assertTrue(week(0, 280));
        assertFalse(week(20, 10));
    }
}
