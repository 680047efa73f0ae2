package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Steps from 5 A, still within 10 mA; voltage steps from 200 mV, telling from 12 mV (D1 to D3). */
class StepWatchTest {
    private static final int AMP = Minutes.AMP;

    private final StepWatch watch = new StepWatch(5 * AMP, 10_000, 200_000, 12_000);

    /** A load of 10 A on and off behind a resistance, so many steps; ends without it. */
    private void steps(int number, int microohms) {
        for (int i = 0; i < number; i += 2) {
            watch.addMinute(-10 * AMP, 12_800_000 - 10 * microohms, false);
            watch.addMinute(0, 12_800_000, false);
        }
    }

    @Test
    void learnsTheResistance() {
        watch.addMinute(0, 12_800_000, false);
        assertEquals(0, watch.resistanceMicroohms());
        watch.addMinute(-5 * AMP, 12_700_000, false);
        assertEquals(20_000, watch.resistanceMicroohms());
        // an eighth of the way to 28 mohm
        watch.addMinute(0, 12_840_000, false);
        assertEquals(21_000, watch.resistanceMicroohms());
    }

    @Test
    void lessThanAStepTeachesNothing() {
        watch.addMinute(0, 12_800_000, false);
        watch.addMinute(-5 * AMP + 1, 12_700_000, false);
        assertEquals(0, watch.resistanceMicroohms());
    }

    @Test
    void aResistanceIsLimitedToAnOhm() {
        watch.addMinute(0, 12_800_000, false);
        watch.addMinute(-5 * AMP, 0, false);
        assertEquals(1_000_000, watch.resistanceMicroohms());
    }

    /** An offset of a microvolt is no charge. */
    @Test
    void aStepFromAnIdleBusTeachesTheResistance() {
        watch.addMinute(10_000, 12_800_000, false);
        watch.addMinute(-5 * AMP, 12_699_800, false);
        assertEquals(20_000, watch.resistanceMicroohms());
        watch.addMinute(10_001, 12_900_000, false);
        assertEquals(20_000, watch.resistanceMicroohms());
    }

    /** Charging lifts lead by a volt where the resistance would lift it by millivolts. */
    @Test
    void aStepFromOrToAChargeTeachesNothing() {
        watch.addMinute(0, 12_800_000, false);
        watch.addMinute(10 * AMP, 14_000_000, false);
        watch.addMinute(-10 * AMP, 12_600_000, false);
        assertEquals(0, watch.resistanceMicroohms());
    }

    /** The voltage climbs under a charger at its limit and falls under a steady load. */
    @Test
    void silentStepsAllOneWayAreNoContradiction() {
        for (int i = 0; i < 20; i++) {
            watch.addMinute(10 * AMP, 12_800_000 + i * 200_000, false);
        }
        assertFalse(watch.isSilent());
        watch.addMinute(10 * AMP, 12_800_000, false);
        watch.addMinute(10 * AMP, 13_000_000, false);
        assertTrue(watch.isSilent(), "up, down, up");
    }

    @Test
    void threeStepsTheWrongWayAreReversed() {
        watch.addMinute(0, 12_800_000, false);
        watch.addMinute(10 * AMP, 12_600_000, false);
        watch.addMinute(0, 12_800_000, false);
        assertFalse(watch.isReversed());
        watch.addMinute(10 * AMP, 12_600_000, false);
        assertTrue(watch.isReversed());
        watch.addMinute(0, 12_500_000, false);
        assertFalse(watch.isReversed());
    }

    /** A charger that holds its voltage while the current falls leaves noise of either sign. */
    @Test
    void theNoiseOfAHeldVoltageSaysNothingOfTheSign() {
        for (int i = 0; i < 10; i++) {
            watch.addMinute(50 * AMP - 5 * i * AMP, 14_200_000 + 11_999 * i, false);
        }
        assertFalse(watch.isReversed());
    }

    @Test
    void theLeastVoltageThatTellsIsCountedAndTakenBack() {
        for (int i = 0; i < 4; i++) {
            watch.addMinute(50 * AMP - 5 * i * AMP, 14_200_000 + 12_000 * i, false);
        }
        assertTrue(watch.isReversed());
        watch.addMinute(25 * AMP, 14_236_000 - 11_999, false);
        assertTrue(watch.isReversed(), "noise takes nothing back");
        watch.addMinute(20 * AMP, 14_212_001, false);
        assertFalse(watch.isReversed());
    }

    /** Protection opens: the wires go up to the charger's own voltage as the current goes. */
    @Test
    void theVoltageOfAChargerThatStandsAloneIsNotTheBatterys() {
        for (int i = 0; i < 5; i++) {
            watch.addMinute(30 * AMP, 13_700_000, false);
            watch.addMinute(0, 14_400_000, true);
        }
        assertFalse(watch.isReversed());
    }

    @Test
    void threeVoltageStepsWithoutACurrentAreSilent() {
        watch.addMinute(0, 12_800_000, false);
        watch.addMinute(10_000, 12_600_000, false);
        watch.addMinute(0, 12_800_000, false);
        assertFalse(watch.isSilent());
        watch.addMinute(0, 12_600_000, false);
        assertTrue(watch.isSilent());
        watch.addMinute(5 * AMP, 12_900_000, false);
        assertFalse(watch.isSilent());
    }

    @Test
    void aSmallVoltageStepOrASmallCurrentIsNotSilent() {
        watch.addMinute(0, 12_800_000, false);
        for (int i = 0; i < 10; i++) {
            watch.addMinute(0, 12_600_001, false);
            watch.addMinute(0, 12_800_000, false);
            watch.addMinute(0, 12_700_000, false);
            watch.addMinute(10_001, 12_500_000, false);
            watch.addMinute(0, 12_800_000, false);
        }
        assertFalse(watch.isSilent());
    }

    @Test
    void twiceTheResistanceOfTheFirstStepsIsRisen() {
        watch.addMinute(0, 12_800_000, false);
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
        watch.addMinute(0, 12_800_000, false);
        steps(2, 1_000);
        steps(12, 50_000);
        assertFalse(watch.isResistanceRisen());
    }

    @Test
    void afterMissingSamplesTheNextMinuteIsNoNeighbour() {
        watch.addMinute(0, 12_800_000, false);
        watch.restart();
        watch.addMinute(-10 * AMP, 12_700_000, false);
        assertEquals(0, watch.resistanceMicroohms());
    }

    @Test
    void anotherBatteryHasAnotherResistance() {
        watch.addMinute(0, 12_800_000, false);
        steps(16, 10_000);
        watch.forget();
        assertEquals(0, watch.resistanceMicroohms());
        watch.addMinute(0, 12_800_000, false);
        steps(16, 30_000);
        assertFalse(watch.isResistanceRisen());
    }
}
