package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LoadFilterTest {
    private static final long CAPACITY = 100 * 3_600_000_000_000L;
    private static final int AMP = 1_000_000;

    private static void minutes(LoadFilter filter, int microamps, int count) {
        for (int i = 0; i < count; i++) {
            filter.addMinute(microamps);
        }
    }

    @Test
    void startsFromTheFirstMinuteAndNotFromZero() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        filter.addStretch(-10 * AMP, 59_000);
        assertFalse(filter.isSeeded());
        filter.addStretch(-10 * AMP, 1_000);
        filter.closeMinute(-10 * AMP);
        assertTrue(filter.isSeeded());
        assertEquals(-10 * AMP, filter.microamps());
        assertEquals(-10L * AMP * 256, filter.microampsQ8());
    }

    @Test
    void theAveragingTimeIsTheOneAskedFor() {
        // 1.2 A lies inside the envelope of 1 A (1.25 A + 0.2 A): averaged, not shown at once.
        LoadFilter ten = new LoadFilter(CAPACITY, 10);
        minutes(ten, -AMP, 60);
        minutes(ten, -1_200_000, 5);
        assertEquals(-1_100_000, ten.microamps());
        minutes(ten, -1_200_000, 5);
        assertEquals(-1_200_000, ten.microamps());
        assertEquals(10, ten.minutesInMean());
    }

    @Test
    void theMarginGrowsWithTheCapacity() {
        LoadFilter small = new LoadFilter(CAPACITY / 10, 30);
        small.addMinute(0);
        assertEquals(-20_000, small.envelopeLowMicroamps());
        LoadFilter large = new LoadFilter(CAPACITY * 10, 30);
        large.addMinute(0);
        assertEquals(-2 * AMP, large.envelopeLowMicroamps());
        assertEquals(2 * AMP, large.envelopeHighMicroamps());
    }

    @Test
    void aLoadThatEndsBeforeItsTimeDoesNotShow() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 60);
        filter.addStretch(-20 * AMP, 40_000);
        assertEquals(8, filter.outsideSlots());
        assertEquals(-2 * AMP, filter.microamps());
    }

    @Test
    void theMinuteInWhichANewLoadIsTakenOverIsLeftOut() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 60);
        filter.addStretch(-2 * AMP, 10_000);
        filter.addStretch(-20 * AMP, 50_000);
        filter.closeMinute(-17 * AMP);
        assertTrue(filter.microamps() < -19 * AMP, "the fast pole answers, not the mixed minute");
    }

    @Test
    void afterAOneOffTheMeanOfTheCyclingLoadIsBack() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        for (int cycle = 0; cycle < 4; cycle++) {
            minutes(filter, -6 * AMP, 10);
            minutes(filter, 0, 20);
        }
        assertEquals(-2 * AMP, filter.microamps());
        minutes(filter, -100 * AMP, 4);
        minutes(filter, 0, 3);
        // Without the old mean it would be near zero; one or two minutes of zero are in it.
        assertTrue(filter.microamps() <= -1_800_000, "microamps " + filter.microamps());
    }

    @Test
    void theOldMeanIsForgottenAfterAnHour() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 60);
        minutes(filter, -20 * AMP, 60);
        assertTrue(filter.rememberedSlotsLeft() > 0);
        minutes(filter, -20 * AMP, 1);
        assertEquals(0, filter.rememberedSlotsLeft());
    }

    @Test
    void aSecondLoadOnTopOfAOneOffLeavesWhatTheFirstInterrupted() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 60);
        minutes(filter, -20 * AMP, 5);
        minutes(filter, -60 * AMP, 5);
        assertEquals(-60 * AMP, filter.microamps());
        minutes(filter, -2 * AMP, 3);
        assertEquals(-2 * AMP, filter.microamps());
    }

    @Test
    void chargingIsALighterLoadAndItsEndAHeavierOne() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 60);
        minutes(filter, 10 * AMP, 2);
        assertTrue(filter.microamps() < 0, "not yet believed");
        minutes(filter, 10 * AMP, 3);
        assertEquals(10 * AMP, filter.microamps());
        filter.addMinute(-5 * AMP);
        assertTrue(filter.microamps() < 0, "believed within the minute");
    }

    @Test
    void anAbandonedMinuteDropsItsSlotAndKeepsTheRest() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -2 * AMP, 10);
        filter.addStretch(-500 * AMP, 4_999);
        filter.abandonMinute();
        assertFalse(filter.addStretch(-2 * AMP, 1));
        assertEquals(-2 * AMP, filter.fastMicroamps());
        assertEquals(-2 * AMP, filter.microamps());
    }

    @Test
    void aSlotIsTheSameInOneStretchOrInMany() {
        LoadFilter one = new LoadFilter(CAPACITY, 30);
        LoadFilter many = new LoadFilter(CAPACITY, 30);
        one.addStretch(-3 * AMP, 60_000);
        for (int i = 0; i < 600; i++) {
            many.addStretch(-3 * AMP, 100);
        }
        assertEquals(one.fastMicroamps(), many.fastMicroamps());
        assertEquals(one.oneMinuteMicroamps(), many.oneMinuteMicroamps());
    }

    @Test
    void theRollingMinuteIsABoxAndNoPole() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        filter.addMinute(0);
        filter.addStretch(6 * AMP, 30_000);
        assertEquals(3 * AMP, filter.oneMinuteMicroamps());
        filter.addStretch(6 * AMP, 30_000);
        assertEquals(6 * AMP, filter.oneMinuteMicroamps());
    }

    @Test
    void theRollingMinuteSpeaksDuringItsFirstMinute() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        filter.addStretch(-6 * AMP, 5_000);
        assertEquals(-6 * AMP, filter.oneMinuteMicroamps());
    }

    @Test
    void usualUseIsWhatADayTookOutSpreadOverTheDay() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        minutes(filter, -3 * AMP, 59);
        assertEquals(0, filter.usualMicroamps());
        minutes(filter, -3 * AMP, 1);
        assertEquals(3 * AMP, filter.usualMicroamps());
        // 8 h of charging take nothing out: 15 + 1 hours of 3 A over 24.
        minutes(filter, 20 * AMP, 8 * 60);
        minutes(filter, -3 * AMP, 15 * 60);
        assertEquals(24, filter.usualHours());
        assertEquals(2 * AMP, filter.usualMicroamps());
        minutes(filter, -6 * AMP, 24 * 60);
        assertEquals(6 * AMP, filter.usualMicroamps());
    }
}
