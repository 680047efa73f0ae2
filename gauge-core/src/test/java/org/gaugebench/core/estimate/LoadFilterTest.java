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

    /** Slots of 5 s from the start of a minute, which is closed with its own mean. */
    private static final class Slots {
        private final LoadFilter filter = new LoadFilter(CAPACITY, 30);
        private long sumMicroamps;
        private int count;

        void add(int number, int microamps) {
            for (int i = 0; i < number; i++) {
                filter.addStretch(microamps, LoadFilter.SLOT_MILLIS);
                sumMicroamps += microamps;
                count++;
                if (count == 12) {
                    filter.closeMinute((int) (sumMicroamps / 12));
                    sumMicroamps = 0;
                    count = 0;
                }
            }
        }

        /** Slots of one current until the old mean is back; at most a quarter of an hour. */
        int untilBack(int microamps) {
            for (int i = 1; i <= 180; i++) {
                add(1, microamps);
                if (filter.rememberedSlotsLeft() == 0) {
                    return i;
                }
            }
            return 0;
        }
    }

    /**
     * T1: ten minutes of 2.05 A on average, then something heavier or lighter for five, from the
     * start of a minute or from its middle. What comes back is the mean from before, of as many
     * minutes, and nothing of the minute in which the load began.
     */
    @Test
    void theMeanThatComesBackIsTheOneFromBeforeTheLoad() {
        for (int load : new int[] {-40 * AMP, 30 * AMP}) {
            for (int slotsBefore : new int[] {0, 6}) {
                Slots slots = new Slots();
                slots.add(9 * 12, -2 * AMP);
                slots.add(12, -2_500_000);
                slots.add(slotsBefore, -2 * AMP);
                slots.add(60, load);
                assertTrue(slots.filter.rememberedSlotsLeft() > 0, "taken over");
                assertTrue(slots.untilBack(-2 * AMP) > 0);
                assertEquals(-2_050_000, slots.filter.microamps());
                assertEquals(10, slots.filter.minutesInMean());
            }
        }
    }

    /**
     * From 1 A of charge back to 2 A of load: 3 A x 0.719^n is under the 0.7 A of the envelope from
     * the fifth slot on, and nine slots inside end in the thirteenth. On its way the current passes
     * under the new envelope, which must not take it for a third load.
     */
    @Test
    void insideTheOldEnvelopeNoNewLoadIsLookedFor() {
        Slots slots = new Slots();
        slots.add(10 * 12, -2 * AMP);
        slots.add(5 * 12, AMP);
        assertEquals(AMP, slots.filter.microamps());
        assertEquals(13, slots.untilBack(-2 * AMP));
        assertEquals(-2 * AMP, slots.filter.microamps());
    }

    @Test
    void timeOutsideTheEnvelopeCountsOnEitherSide() {
        for (int load : new int[] {-20 * AMP, 20 * AMP}) {
            LoadFilter filter = new LoadFilter(CAPACITY, 30);
            minutes(filter, -2 * AMP, 10);
            filter.addStretch(load, 40_000);
            assertEquals(8, filter.outsideSlots());
        }
    }

    @Test
    void theFastPoleStartsFromTheFirstSlotAndNotFromZero() {
        LoadFilter filter = new LoadFilter(CAPACITY, 30);
        assertFalse(filter.addStretch(-10 * AMP, 4_999));
        assertTrue(filter.addStretch(-10 * AMP, 1), "a slot is whole");
        assertEquals(-10 * AMP, filter.fastMicroamps());
    }

    /**
     * T1 asks for a current outside; 0.2 A either way are the edge of nothing at 100 Ah. The fast
     * pole rounds down, so from below it stops a microamp short.
     */
    @Test
    void theEdgeOfTheEnvelopeIsInside() {
        int[][] edgeAndBeyond = {{-200_000, -200_001}, {200_001, 200_002}};
        for (int[] load : edgeAndBeyond) {
            for (int i = 0; i < 2; i++) {
                LoadFilter filter = new LoadFilter(CAPACITY, 30);
                filter.addMinute(0);
                boolean outside = false;
                for (int slot = 0; slot < 120; slot++) {
                    filter.addStretch(load[i], LoadFilter.SLOT_MILLIS);
                    outside |= filter.outsideSlots() > 0;
                }
                assertEquals(i == 1, outside, load[i] + " uA");
            }
        }
    }

    /** The same edge on the way back: on it the old mean returns, beside it it does not. */
    @Test
    void theEdgeOfTheOldEnvelopeIsInside() {
        int[][] loadEdgeAndBeside = {{-40 * AMP, -199_999, -200_001}, {30 * AMP, 200_000, 200_001}};
        for (int[] load : loadEdgeAndBeside) {
            for (int i = 1; i <= 2; i++) {
                Slots slots = new Slots();
                slots.add(12, 0);
                slots.add(60, load[0]);
                assertTrue(slots.filter.rememberedSlotsLeft() > 0);
                assertEquals(i == 1, slots.untilBack(load[i]) > 0, load[i] + " uA");
            }
        }
    }
}
