package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Steps from 5 A, still within 10 mA, voltage steps from 200 mV (rules D1 to D3). */
class StepWatchTest {
    private static final int AMP = Minutes.AMP;

    private final StepWatch watch = new StepWatch(5 * AMP, 10_000, 200_000);

    /** A load of 10 A on and off behind a resistance, so many steps; ends without it. */
    private void steps(int number, int microohms) {
        for (int i = 0; i < number; i += 2) {
            watch.addMinute(-10 * AMP, 12_800_000 - 10 * microohms);
            watch.addMinute(0, 12_800_000);
        }
    }

    @Test
    void learnsTheResistance() {
        watch.addMinute(0, 12_800_000);
        assertEquals(0, watch.resistanceMicroohms());
        watch.addMinute(-5 * AMP, 12_700_000);
        assertEquals(20_000, watch.resistanceMicroohms());
        // an eighth of the way to 28 mohm
        watch.addMinute(0, 12_840_000);
        assertEquals(21_000, watch.resistanceMicroohms());
    }

    @Test
    void lessThanAStepTeachesNothing() {
        watch.addMinute(0, 12_800_000);
        watch.addMinute(-5 * AMP + 1, 12_700_000);
        assertEquals(0, watch.resistanceMicroohms());
    }

    @Test
    void aResistanceIsLimitedToAnOhm() {
        watch.addMinute(0, 12_800_000);
        watch.addMinute(-5 * AMP, 0);
        assertEquals(1_000_000, watch.resistanceMicroohms());
    }

    /** Charging lifts lead by a volt where the resistance would lift it by millivolts. */
    @Test
    void aStepFromOrToAChargeTeachesNothing() {
        watch.addMinute(0, 12_800_000);
        watch.addMinute(10 * AMP, 14_000_000);
        watch.addMinute(-10 * AMP, 12_600_000);
        assertEquals(0, watch.resistanceMicroohms());
    }

    /** The voltage climbs under a charger at its limit and falls under a steady load. */
    @Test
    void silentStepsAllOneWayAreNoContradiction() {
        for (int i = 0; i < 20; i++) {
            watch.addMinute(10 * AMP, 12_800_000 + i * 200_000);
        }
        assertFalse(watch.isSilent());
        watch.addMinute(10 * AMP, 12_800_000);
        watch.addMinute(10 * AMP, 13_000_000);
        assertTrue(watch.isSilent(), "up, down, up");
    }

    @Test
    void threeStepsTheWrongWayAreReversed() {
        watch.addMinute(0, 12_800_000);
        watch.addMinute(10 * AMP, 12_600_000);
        watch.addMinute(0, 12_800_000);
        assertFalse(watch.isReversed());
        watch.addMinute(10 * AMP, 12_600_000);
        assertTrue(watch.isReversed());
        watch.addMinute(0, 12_500_000);
        assertFalse(watch.isReversed());
    }

    @Test
    void threeVoltageStepsWithoutACurrentAreSilent() {
        watch.addMinute(0, 12_800_000);
        watch.addMinute(10_000, 12_600_000);
        watch.addMinute(0, 12_800_000);
        assertFalse(watch.isSilent());
        watch.addMinute(0, 12_600_000);
        assertTrue(watch.isSilent());
        watch.addMinute(5 * AMP, 12_900_000);
        assertFalse(watch.isSilent());
    }

    @Test
    void aSmallVoltageStepOrASmallCurrentIsNotSilent() {
        watch.addMinute(0, 12_800_000);
        for (int i = 0; i < 10; i++) {
            watch.addMinute(0, 12_600_001);
            watch.addMinute(0, 12_800_000);
            watch.addMinute(0, 12_700_000);
            watch.addMinute(10_001, 12_500_000);
            watch.addMinute(0, 12_800_000);
        }
        assertFalse(watch.isSilent());
    }

    @Test
    void twiceTheResistanceOfTheFirstStepsIsRisen() {
        watch.addMinute(0, 12_800_000);
        steps(16, 10_000);
        assertEquals(10_000, watch.resistanceMicroohms());
        steps(16, 15_000);
        assertFalse(watch.isResistanceRisen());
        steps(40, 25_000);
        assertTrue(watch.isResistanceRisen());
        steps(40, 10_000);
        assertFalse(watch.isResistanceRisen());
    }

    @Test
    void beforeSixteenStepsThereIsNoReference() {
        watch.addMinute(0, 12_800_000);
        steps(2, 1_000);
        steps(12, 50_000);
        assertFalse(watch.isResistanceRisen());
    }

    @Test
    void afterMissingSamplesTheNextMinuteIsNoNeighbour() {
        watch.addMinute(0, 12_800_000);
        watch.restart();
        watch.addMinute(-10 * AMP, 12_700_000);
        assertEquals(0, watch.resistanceMicroohms());
    }

    @Test
    void anotherBatteryHasAnotherResistance() {
        watch.addMinute(0, 12_800_000);
        steps(16, 10_000);
        watch.forget();
        assertEquals(0, watch.resistanceMicroohms());
        watch.addMinute(0, 12_800_000);
        steps(16, 30_000);
        assertFalse(watch.isResistanceRisen());
    }
}
