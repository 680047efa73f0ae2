package org.gaugebench.core.rules;

import static org.gaugebench.core.rules.FullChargeFixture.TAPER;
import static org.gaugebench.core.rules.FullChargeFixture.THRESHOLD;
import static org.gaugebench.core.rules.FullChargeFixture.UNDER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The plain way to full: threshold, taper range, hold, flatness, and the count (F2 to F9). */
class FullChargeRuleTest {
    private final FullChargeFixture f = new FullChargeFixture();

    @Test
    void startsWaitingForAMinute() {
        f.assertStands(RuleState.WAITING, RuleReason.NO_MINUTE_YET, 0);
        assertEquals(THRESHOLD, f.rule.thresholdMicrovolts());
        assertTrue(f.rule.isOn() && f.rule.isArmed());
        assertFalse(f.rule.flowSeen() || f.rule.flowStopped() || f.rule.isEvidence());
    }

    @Test
    void exactlyAtThresholdAndTaperForTheHoldProvesFull() {
        f.bulk().silent(1, THRESHOLD, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        f.silent(3, THRESHOLD, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 4);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(THRESHOLD, TAPER));
        f.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_BY_TAPER, 0);
        assertEquals(1, f.rule.fullCount());
        assertEquals(30_000, f.rule.residualPartsPerMillion());
        assertTrue(f.rule.isEvidence());
        assertFalse(f.rule.isArmed());
    }

    @Test
    void oneMicrovoltUnderTheThresholdWaits() {
        f.bulk().silent(1, THRESHOLD - 1, TAPER);
        f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        assertEquals(0, f.minutesUntilFull(100, THRESHOLD - 1, TAPER));
    }

    @Test
    void oneMicroampAboveTheTaperWaits() {
        f.bulk().silent(1, THRESHOLD, TAPER + 1);
        f.assertStands(RuleState.WAITING, RuleReason.CURRENT_ABOVE_TAPER, 0);
        assertEquals(0, f.minutesUntilFull(500, THRESHOLD, TAPER + 1));
    }

    @Test
    void theTaperRangeReachesAQuarterBelowZero() {
        f.bulk().silent(1, THRESHOLD, -TAPER / 4);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        f.silent(1, THRESHOLD, -TAPER / 4 - 1);
        f.assertStands(RuleState.PAUSED, RuleReason.CURRENT_BELOW_TAPER, 1);
    }

    /** A minute of 14.6 V with one half at 13 V proves nothing; nor does a spike of 16 V. */
    @Test
    void theLowestVoltageOfTheMinuteCounts() {
        f.bulk().minute(14_600_000, 13_000_000, TAPER, TAPER);
        f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        f.minute(13_000_000, 16_000_000, TAPER, TAPER);
        f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
    }

    @Test
    void theMeanCurrentOfTheMinuteCounts() {
        f.bulk().minute(THRESHOLD, THRESHOLD, 10_000_000, -10_000_000);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    /** -24 mV/K from 25 °C: 13.96 V at 35 °C, 14.44 V at 15 °C, 24 uV to the millikelvin. */
    @Test
    void theThresholdFollowsTheTemperatureOnBothSides() {
        f.bulk();
        int[][] points = {
            {35_000, 13_960_000}, {15_000, 14_440_000}, {25_000, 14_200_000}, {25_001, 14_199_976}
        };
        for (int[] point : points) {
            f.millicelsius = point[0];
            f.rule.declareNotFull();
            f.minute(point[1], TAPER);
            assertEquals(point[1], f.rule.thresholdMicrovolts());
            f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
            f.rule.declareNotFull();
            f.minute(point[1] - 1, TAPER);
            f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        }
    }

    /**
     * A sensor that sends garbage moves the threshold by the limit at most: cold garbage to 14.8 V,
     * which no charger reaches, hot garbage to 13.6 V, which is above any float.
     */
    @Test
    void garbageTemperaturesMoveTheThresholdNoFurtherThanTheLimit() {
        int[][] garbage = {
            {-40_000, 14_800_000},
            {Integer.MIN_VALUE + 1, 14_800_000},
            {85_000, 13_600_000},
            {Integer.MAX_VALUE, 13_600_000}
        };
        for (int[] point : garbage) {
            f.millicelsius = point[0];
            f.minute(UNDER, 0);
            assertEquals(point[1], f.rule.thresholdMicrovolts());
        }
        FullChargeFixture fixed = new FullChargeFixture(Setting.COMPENSATION_LIMIT, 0);
        fixed.millicelsius = Integer.MAX_VALUE;
        fixed.minute(UNDER, 0);
        assertEquals(THRESHOLD, fixed.rule.thresholdMicrovolts());
    }

    @Test
    void aShortGapPausesAndTheHoldGoesOn() {
        f.bulk().silent(3, THRESHOLD, TAPER);
        f.silent(1, THRESHOLD - 1, TAPER);
        f.assertStands(RuleState.PAUSED, RuleReason.VOLTAGE_UNDER_THRESHOLD, 3);
        f.silent(1, THRESHOLD, TAPER + 1);
        f.assertStands(RuleState.PAUSED, RuleReason.CURRENT_ABOVE_TAPER, 3);
        f.silent(1, THRESHOLD, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 4);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(THRESHOLD, TAPER));
    }

    @Test
    void aLongerGapRunsTheHoldBack() {
        f.bulk().silent(4, THRESHOLD, TAPER);
        f.silent(3, THRESHOLD, TAPER + 1);
        f.assertStands(RuleState.PAUSED, RuleReason.CURRENT_ABOVE_TAPER, 3);
        f.silent(3, THRESHOLD, TAPER + 1);
        f.assertStands(RuleState.WAITING, RuleReason.CURRENT_ABOVE_TAPER, 0);
    }

    @Test
    void theVoltageMayMoveByTheFlatnessDuringTheHoldAndNoFurther() {
        f.bulk().silent(1, THRESHOLD, TAPER);
        f.silent(1, THRESHOLD + 100_000, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 2);
        f.silent(1, THRESHOLD + 100_001, TAPER);
        f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_NOT_FLAT, 0);
        assertEquals(5, f.minutesUntilFull(5, THRESHOLD + 100_001, TAPER));
    }

    @Test
    void flatnessIsJudgedOverTheMinutesHeldNotOverTheGap() {
        f.bulk().silent(3, THRESHOLD, TAPER);
        f.silent(2, UNDER, TAPER);
        assertEquals(2, f.minutesUntilFull(2, THRESHOLD, TAPER));
    }

    @Test
    void aHoldThatBeginsAnewTakesTheVoltageAsItFindsIt() {
        f.bulk().silent(3, THRESHOLD, TAPER).silent(14, THRESHOLD, TAPER + 1);
        f.assertStands(RuleState.WAITING, RuleReason.CURRENT_ABOVE_TAPER, 0);
        f.silent(1, THRESHOLD + 200_000, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    @Test
    void flatnessZeroAsksForNoFlatness() {
        FullChargeFixture any = new FullChargeFixture(Setting.FLATNESS, 0).bulk();
        any.silent(4, THRESHOLD, TAPER);
        assertEquals(RuleOutcome.SET_TO_FULL, any.minute(20_000_000, TAPER));
    }

    /** 14.4 V and 13.6 V in turn, ten minutes each, as two chargers do: never an hour's hold. */
    @Test
    void twoChargersInTurnProveNothing() {
        FullChargeFixture hour = new FullChargeFixture(Setting.HOLD, 60).bulk();
        for (int i = 0; i < 20; i++) {
            hour.silent(10, 14_400_000, TAPER).silent(10, 13_600_000, TAPER);
        }
        assertEquals(0, hour.rule.fullCount());
    }

    /** An upper edge of 95 % does not contradict; a millionth less asks for four times the hold. */
    @Test
    void aCountThatContradictsAsksForFourTimesTheHold() {
        f.upperEdge = 950_000;
        assertEquals(5, f.bulk().minutesUntilFull(100, THRESHOLD, TAPER));

        FullChargeFixture late = new FullChargeFixture().bulk();
        late.upperEdge = 949_999;
        late.silent(4, THRESHOLD, TAPER);
        late.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 4);
        late.silent(1, THRESHOLD, TAPER);
        late.assertStands(RuleState.HOLDING, RuleReason.LONGER_HOLD_RUNNING, 5);
        late.silent(14, THRESHOLD, TAPER);
        late.assertStands(RuleState.HOLDING, RuleReason.LONGER_HOLD_RUNNING, 19);
        assertEquals(RuleOutcome.SET_TO_FULL, late.minute(THRESHOLD, TAPER));
        late.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_LATE, 0);
        assertEquals(50_000, late.rule.residualPartsPerMillion());
        assertFalse(late.rule.isEvidence());
    }

    @Test
    void aDoubtfulMinuteSpeaksForNothing() {
        f.bulk().silent(4, THRESHOLD, TAPER);
        assertEquals(RuleOutcome.NONE, f.doubtful(THRESHOLD, TAPER));
        f.assertStands(RuleState.PAUSED, RuleReason.READING_DOUBTFUL, 4);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(THRESHOLD, TAPER));
    }

    /** A bus that hangs repeats its last good figures for ever; they prove nothing. */
    @Test
    void doubtfulMinutesNeverProveFull() {
        f.bulk().silent(1, THRESHOLD, TAPER);
        for (int i = 0; i < 3 * Minutes.DAY; i++) {
            assertEquals(RuleOutcome.NONE, f.doubtful(THRESHOLD, TAPER));
        }
        f.assertStands(RuleState.WAITING, RuleReason.READING_DOUBTFUL, 0);
        assertFalse(f.rule.flowSeen());
    }

    @Test
    void aHoldOfOneMinuteProvesAtOnce() {
        FullChargeFixture quick = new FullChargeFixture(Setting.HOLD, 1).bulk();
        assertEquals(RuleOutcome.SET_TO_FULL, quick.minute(THRESHOLD, TAPER));
    }

    @Test
    void absorptionZeroSwitchesTheRuleOff() {
        FullChargeFixture off = new FullChargeFixture(Setting.ABSORPTION, 0);
        off.atLimit = true;
        assertEquals(0, off.bulk().minutesUntilFull(3 * Minutes.DAY, 60_000_000, 0));
        off.rule.declareFull();
        off.rule.declareNotFull();
        off.rule.samplesMissing();
        off.rule.resume(false, 1, 7);
        off.assertStands(RuleState.WAITING, RuleReason.SWITCHED_OFF, 0);
        assertEquals(7, off.rule.fullCount());
        assertFalse(off.rule.isOn());
    }
}
