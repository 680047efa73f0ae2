package org.gaugebench.core.rules;

import static org.gaugebench.core.rules.FullChargeFixture.TAPER;
import static org.gaugebench.core.rules.FullChargeFixture.THRESHOLD;
import static org.gaugebench.core.rules.FullChargeFixture.UNDER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Fault;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Each slow fault appears and goes again (D rules); 100 Ah, 12 V. */
class DiagnosisTest {
    private static final int AMP = Minutes.AMP;

    private final Minutes minutes = new Minutes();
    private final FullChargeFixture f = new FullChargeFixture();
    private Diagnosis diagnosis = new Diagnosis(Minutes.settings());
    private int bits;

    private void minute(int microvolts, int microamps, long measuredMilliampHours) {
        f.minute(microvolts, microamps);
        bits = diagnosis.judge(minutes.still(microvolts, microamps), f.rule, measuredMilliampHours);
    }

    private void minutes(int number, int microvolts, int microamps) {
        for (int i = 0; i < number; i++) {
            minute(microvolts, microamps, 0);
        }
    }

    private boolean stands(Fault fault) {
        return (bits & fault.bit()) != 0;
    }

    @Test
    void aSoundDayHasNoFault() {
        for (int i = 0; i < 6 * Minutes.DAY; i++) {
            minute(12_700_000, -AMP, 100_000);
        }
        assertEquals(0, bits);
    }

    @Test
    void aReversedShuntAppearsAndClears() {
        minutes(1, 12_800_000, 0);
        minutes(1, 12_500_000, 10 * AMP);
        minutes(1, 12_800_000, 0);
        assertFalse(stands(Fault.POLARITY_REVERSED));
        minutes(1, 12_500_000, 10 * AMP);
        assertTrue(stands(Fault.POLARITY_REVERSED));
        minutes(1, 12_400_000, 0);
        assertFalse(stands(Fault.POLARITY_REVERSED));
    }

    /** 200 mV, a sixtieth of 12 V, three times, with no more than 10 mA beside it. */
    @Test
    void anOpenSenseLeadAppearsAndClears() {
        minutes(1, 12_800_000, 0);
        minutes(1, 12_600_000, 10_000);
        minutes(1, 12_800_000, 0);
        assertFalse(stands(Fault.CURRENT_NOT_SEEN));
        minutes(1, 12_600_000, 10_000);
        assertTrue(stands(Fault.CURRENT_NOT_SEEN));
        minutes(1, 12_500_000, -5 * AMP);
        assertFalse(stands(Fault.CURRENT_NOT_SEEN));
    }

    @Test
    void aBadJointAppearsAndClears() {
        int[] microohms = {10_000, 30_000, 10_000};
        boolean[] risen = {false, true, false};
        minutes(1, 12_800_000, 0);
        for (int phase = 0; phase < 3; phase++) {
            for (int i = 0; i < 30; i++) {
                minutes(1, 12_800_000 - 10 * microohms[phase], -10 * AMP);
                minutes(1, 12_800_000, 0);
            }
            assertEquals(risen[phase], stands(Fault.RESISTANCE_RISEN), "phase " + phase);
        }
        assertTrue(Math.abs(diagnosis.resistanceMicroohms() - 10_000) <= 500);
    }

    @Test
    void aBypassAppearsAfterAWeekAndClearsAfterAnother() {
        // 2 A out for a week are 336 Ah with nothing in
        minutes(7 * Minutes.DAY - 1, 12_700_000, -2 * AMP);
        assertFalse(stands(Fault.IN_OUT_RATIO_OFF));
        minutes(1, 12_700_000, -2 * AMP);
        assertTrue(stands(Fault.IN_OUT_RATIO_OFF));
        for (int i = 0; i < 7 * Minutes.DAY; i++) {
            minutes(1, 12_700_000, i % 2 == 0 ? 2 * AMP : -2 * AMP);
        }
        assertFalse(stands(Fault.IN_OUT_RATIO_OFF));
    }

    @Test
    void chargingThatStopsEarlyAppearsAndClears() {
        minutes(5, 13_900_000, 30 * AMP);
        minutes(40, 14_400_000, 0);
        assertTrue(stands(Fault.CHARGING_STOPPED_EARLY));
        assertFalse(stands(Fault.CHARGING_BLOCKED));
        minutes(1, UNDER, 0);
        assertFalse(stands(Fault.CHARGING_STOPPED_EARLY));
        minutes(1, 14_400_000, 0);
        assertTrue(stands(Fault.CHARGING_STOPPED_EARLY));
        minutes(1, 14_400_000, AMP);
        assertFalse(stands(Fault.CHARGING_STOPPED_EARLY));
    }

    @Test
    void blockedChargingAppearsAfterHalfAnHourAndClears() {
        minutes(29, THRESHOLD, 0);
        assertFalse(stands(Fault.CHARGING_BLOCKED));
        minutes(1, THRESHOLD, 0);
        assertTrue(stands(Fault.CHARGING_BLOCKED));
        assertFalse(stands(Fault.CHARGING_STOPPED_EARLY));
        minutes(1, THRESHOLD, AMP);
        assertFalse(stands(Fault.CHARGING_BLOCKED));
        minutes(29, THRESHOLD, 0);
        assertFalse(stands(Fault.CHARGING_BLOCKED));
    }

    /** A doubtful minute shows no flow, whatever flows: garbage must not look like a blockage. */
    @Test
    void doubtfulMinutesAreNoBlockage() {
        minutes(29, THRESHOLD, 0);
        for (int i = 0; i < 5; i++) {
            f.doubtful(THRESHOLD, 0);
            bits = diagnosis.judge(minutes.doubtful(THRESHOLD, 0), f.rule, 0);
        }
        assertFalse(stands(Fault.CHARGING_BLOCKED));
        minutes(1, THRESHOLD, 0);
        assertTrue(stands(Fault.CHARGING_BLOCKED));
    }

    /** The wires show the charger as the battery's protection opens and closes. */
    @Test
    void aChargerBehindAnOpenProtectionIsNoReversedShunt() {
        for (int i = 0; i < 10; i++) {
            minutes(1, 13_700_000, 30 * AMP);
            minutes(1, 14_400_000, 0);
        }
        assertFalse(stands(Fault.POLARITY_REVERSED));
    }

    /** After full the current may well be nothing at full voltage: not a fault. */
    @Test
    void aFullBatteryIsNotBlocked() {
        f.bulk().minutesUntilFull(5, THRESHOLD, TAPER);
        minutes(600, THRESHOLD, 0);
        assertEquals(0, bits);
    }

    @Test
    void withoutAFullChargeRuleNothingIsBlocked() {
        FullChargeRule off = new FullChargeRule(Minutes.settings(Setting.ABSORPTION, 0));
        for (int i = 0; i < 60; i++) {
            bits = diagnosis.judge(minutes.still(14_400_000, 0), off, 0);
        }
        assertEquals(0, bits);
    }

    @Test
    void anOverdueFullAppearsAfterSevenDaysAndClears() {
        minutes(7 * Minutes.DAY - 1, 12_700_000, 0);
        assertFalse(stands(Fault.FULL_OVERDUE));
        minutes(1, 12_700_000, 0);
        assertTrue(stands(Fault.FULL_OVERDUE));
        assertEquals(7 * Minutes.DAY, diagnosis.minutesSinceFull());
        diagnosis.full(false);
        minutes(1, 12_700_000, 0);
        assertFalse(stands(Fault.FULL_OVERDUE));
        assertEquals(1, diagnosis.minutesSinceFull());
    }

    /** Kept at float it is full every day, and what goes in is gas: no fault, for forty days. */
    @Test
    void aBatteryKeptFullIsNeitherOverdueNorUnbalanced() {
        f.rule.declareFull();
        diagnosis.full(false);
        minutes(40 * Minutes.DAY, 13_500_000, AMP);
        assertEquals(0, bits);
        assertEquals(0, diagnosis.minutesSinceFull());
    }

    @Test
    void fullOverdueZeroIsNever() {
        diagnosis = new Diagnosis(Minutes.settings(Setting.FULL_OVERDUE, 0));
        diagnosis.resume(1L << 39);
        minutes(1, 12_700_000, 0);
        assertFalse(stands(Fault.FULL_OVERDUE));
    }

    @Test
    void theTimeSinceFullIsTakenOver() {
        diagnosis.resume(7 * Minutes.DAY - 1);
        minutes(1, 12_700_000, 0);
        assertTrue(stands(Fault.FULL_OVERDUE));
        diagnosis.resume(5);
        assertEquals(5, diagnosis.minutesSinceFull());
    }

    @Test
    void timeWithoutPowerIsTimeWithoutAFullCharge() {
        diagnosis.addOffTime(7 * Minutes.DAY - 1);
        minutes(1, 12_700_000, 0);
        assertTrue(stands(Fault.FULL_OVERDUE));
        diagnosis.addOffTime(Long.MAX_VALUE);
        diagnosis.addOffTime(Long.MAX_VALUE);
        assertEquals(1L << 40, diagnosis.minutesSinceFull());
    }

    @Test
    void whatStandsUntilTheNextFullOutlivesAnEdit() {
        diagnosis.full(true);
        diagnosis.earlyEmpty();
        minutes(3, 12_700_000, 0);
        Diagnosis edited = new Diagnosis(Minutes.settings());
        edited.takeOver(diagnosis);
        assertEquals(3, edited.minutesSinceFull());
        bits = edited.judge(minutes.still(12_700_000, 0), f.rule, 0);
        assertTrue(stands(Fault.SCALE_SUSPECT));
        assertTrue(stands(Fault.EMPTY_EARLY));
    }

    @Test
    void aFullAgainstTheCountSuspectsTheScaleUntilTheNext() {
        diagnosis.full(true);
        minutes(1, 12_700_000, 0);
        assertTrue(stands(Fault.SCALE_SUSPECT));
        diagnosis.full(false);
        minutes(1, 12_700_000, 0);
        assertFalse(stands(Fault.SCALE_SUSPECT));
    }

    @Test
    void anEarlyEmptyStandsUntilTheNextFull() {
        diagnosis.earlyEmpty();
        minutes(1, 12_700_000, 0);
        assertTrue(stands(Fault.EMPTY_EARLY));
        diagnosis.full(false);
        minutes(1, 12_700_000, 0);
        assertFalse(stands(Fault.EMPTY_EARLY));
    }

    @Test
    void aCapacityUnderFourFifthsIsWorn() {
        minute(12_700_000, 0, 79_999);
        assertTrue(stands(Fault.CAPACITY_WORN));
        minute(12_700_000, 0, 80_000);
        assertFalse(stands(Fault.CAPACITY_WORN));
    }

    @Test
    void anotherBatteryHasNoneOfTheOldOnesFaults() {
        minutes(7 * Minutes.DAY, 12_700_000, -2 * AMP);
        for (int i = 0; i < 5; i++) {
            minutes(1, 12_800_000 - i % 2 * 300_000, i % 2 * 10 * AMP);
        }
        assertTrue(stands(Fault.POLARITY_REVERSED));
        diagnosis.full(true);
        diagnosis.earlyEmpty();
        diagnosis.newBattery();
        minutes(1, 12_700_000, 0);
        assertEquals(0, bits);
    }

    /** Three steps the wrong way, each with a gap before it, are no steps. */
    @Test
    void afterMissingSamplesTheNextMinuteIsNoNeighbour() {
        for (int i = 0; i < 6; i++) {
            diagnosis.samplesMissing();
            minutes(1, 12_800_000 - i % 2 * 300_000, i % 2 * 10 * AMP);
        }
        assertFalse(stands(Fault.POLARITY_REVERSED));
    }

    /** D2: a sixtieth of 12 V is 200 mV, and 400 mV of 24 V; a microvolt less needs no current. */
    @Test
    void aSmallStepOfTheVoltageNeedsNoCurrent() {
        for (int nominalMillivolts : new int[] {12_000, 24_000}) {
            int step = nominalMillivolts * 1_000 / 60;
            for (int less = 0; less <= 1; less++) {
                diagnosis =
                        new Diagnosis(Minutes.settings(Setting.NOMINAL_VOLTAGE, nominalMillivolts));
                for (int i = 0; i < 4; i++) {
                    minutes(1, nominalMillivolts * 1_000 - i % 2 * (step - less), 0);
                }
                assertEquals(less == 0, stands(Fault.CURRENT_NOT_SEEN));
            }
        }
    }

    /** D1: a load that moves the voltage by nothing says nothing of the shunt's sign. */
    @Test
    void aStepThatMovesNoVoltageIsNotReversed() {
        for (int i = 0; i < 10; i++) {
            minutes(1, 12_800_000, i % 2 * -10 * AMP);
        }
        assertFalse(stands(Fault.POLARITY_REVERSED));
    }

    /** D3: an eighth of the way from 10 to 90 mohm is 20, exactly twice; a microohm less is not. */
    @Test
    void exactlyTwiceTheResistanceIsRisen() {
        for (int microohms : new int[] {89_992, 90_000}) {
            diagnosis = new Diagnosis(Minutes.settings());
            minutes(1, 12_800_000, 0);
            for (int i = 0; i < 8; i++) {
                minutes(1, 12_700_000, -10 * AMP);
                minutes(1, 12_800_000, 0);
            }
            minutes(1, 12_800_000 - 10 * microohms, -10 * AMP);
            assertEquals(10_000 + (microohms - 10_000) / 8, diagnosis.resistanceMicroohms());
            assertEquals(microohms == 90_000, stands(Fault.RESISTANCE_RISEN));
        }
    }

    /** D4: a week that takes 90 of 100 Ah out of the battery took what was in it. */
    @Test
    void aWeekMayTakeWhatTheBatteryHolds() {
        minutes(7 * Minutes.DAY, 12_700_000, -535_000);
        assertFalse(stands(Fault.IN_OUT_RATIO_OFF));
    }

    /** D4: 16.8 Ah of 100 are less than a fifth, and leave the answer of the week before. */
    @Test
    void aQuietWeekLeavesTheAnswer() {
        minutes(7 * Minutes.DAY, 12_700_000, -2 * AMP);
        assertTrue(stands(Fault.IN_OUT_RATIO_OFF));
        minutes(7 * Minutes.DAY, 12_700_000, -100_000);
        assertTrue(stands(Fault.IN_OUT_RATIO_OFF));
        minutes(7 * Minutes.DAY, 12_700_000, -120_000);
        assertFalse(stands(Fault.IN_OUT_RATIO_OFF));
    }

    /** D1: a twentieth of 100 Ah an hour is 5 A, twenty bounds of 0.5 A are 10; less is no step. */
    @Test
    void aSmallStepOfTheCurrentSaysNothingOfTheSign() {
        int[][] boundAndStep = {{10_000, 5 * AMP}, {500_000, 10 * AMP}};
        for (int[] point : boundAndStep) {
            for (int less = 0; less <= 1; less++) {
                diagnosis = new Diagnosis(Minutes.settings(Setting.OFFSET_BOUND, point[0]));
                for (int i = 0; i < 6; i++) {
                    minutes(1, 12_800_000 - i % 2 * 150_000, i % 2 * (point[1] - less));
                }
                assertEquals(less == 0, stands(Fault.POLARITY_REVERSED), point[1] - less + " uA");
            }
        }
    }
}
