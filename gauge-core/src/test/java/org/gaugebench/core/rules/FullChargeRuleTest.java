package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * Each state, reason and transition of the full-charge rule, at its boundaries (rules G9 to G13).
 * 100 Ah, 14.4 V less 0.2 V, taper 2 A, so the range is -0.5 A to 2 A; hold 3 minutes; re-arm 2 Ah.
 */
class FullChargeRuleTest {
    private static final int THRESHOLD_MICROVOLTS = 14_200_000;
    private static final int TAPER_MICROAMPS = 2_000_000;
    private static final int ABSENT = Sample.TEMPERATURE_ABSENT;
    private static final long AMP_HOUR = 3_600_000_000_000L;

    private final FullChargeRule rule = new FullChargeRule(settings().build());
    private final MinuteMean minute = new MinuteMean();

    private static GaugeSettings.Builder settings() {
        return GaugeSettings.builder().set(Setting.HOLD, 3);
    }

    private RuleOutcome minute(int microvolts, int microamps) {
        return minute(rule, microvolts, microamps, ABSENT);
    }

    private RuleOutcome minute(
            FullChargeRule judge, int microvolts, int microamps, int millicelsius) {
        minute.add(microamps, microvolts, MinuteMean.MINUTE_MILLIS);
        minute.close();
        return judge.judge(minute, millicelsius);
    }

    private void assertStands(RuleState state, RuleReason reason, int heldMinutes) {
        assertEquals(state, rule.state());
        assertEquals(reason, rule.reason());
        assertEquals(heldMinutes, rule.heldMinutes());
    }

    private void proveFull() {
        assertEquals(RuleOutcome.NONE, minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS));
        assertEquals(RuleOutcome.NONE, minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS));
        assertEquals(RuleOutcome.SET_TO_FULL, minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS));
    }

    @Test
    void startsWaitingForAMinute() {
        assertStands(RuleState.WAITING, RuleReason.NO_MINUTE_YET, 0);
        assertEquals(THRESHOLD_MICROVOLTS, rule.thresholdMicrovolts());
    }

    @Test
    void exactlyAtThresholdAndTaperForTheHoldProvesFull() {
        minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS);
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS);
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 2);
        assertEquals(RuleOutcome.SET_TO_FULL, minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS));
        assertStands(RuleState.NOT_ARMED, RuleReason.FULL_PROVEN, 0);
        assertEquals(1, rule.fullCount());
    }

    @Test
    void oneMicrovoltUnderTheThresholdWaits() {
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS - 1, 0);
        assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
    }

    @Test
    void oneMicroampAboveTheTaperWaits() {
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS, TAPER_MICROAMPS + 1);
        assertStands(RuleState.WAITING, RuleReason.CURRENT_ABOVE_TAPER, 0);
    }

    @Test
    void theTaperRangeReachesAQuarterBelowZero() {
        minute(THRESHOLD_MICROVOLTS, -TAPER_MICROAMPS / 4);
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        minute(THRESHOLD_MICROVOLTS, -TAPER_MICROAMPS / 4 - 1);
        assertStands(RuleState.WAITING, RuleReason.CURRENT_BELOW_TAPER, 0);
    }

    @Test
    void anInterruptedHoldStartsAgain() {
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS - 1, 0);
        proveFull();
    }

    /** A minute of 14.6 V with one second at 13 V proves nothing; nor does a spike of 16 V. */
    @Test
    void theLowestVoltageOfTheMinuteCounts() {
        minute.add(0, 14_600_000, 59_000);
        minute.add(0, 13_000_000, 1_000);
        minute.close();
        rule.judge(minute, ABSENT);
        assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        minute.add(0, 13_000_000, 59_000);
        minute.add(0, 16_000_000, 1_000);
        minute.close();
        rule.judge(minute, ABSENT);
        assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
    }

    /** A pump of 10 A for 6 s in the minute leaves the mean in the range. */
    @Test
    void theMeanCurrentOfTheMinuteCounts() {
        minute.add(1_000_000, THRESHOLD_MICROVOLTS, 54_000);
        minute.add(-10_000_000, THRESHOLD_MICROVOLTS, 6_000);
        minute.close();
        rule.judge(minute, ABSENT);
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    /**
     * -24 mV/K: at 35 °C the threshold is 13.96 V, at 15 °C 14.44 V, at 25 °C and absent 14.2 V.
     */
    @Test
    void theThresholdFollowsTheTemperatureOnBothSides() {
        minute(rule, 13_960_000, 0, 35_000);
        assertEquals(13_960_000, rule.thresholdMicrovolts());
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        minute(rule, 13_959_999, 0, 35_000);
        assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        minute(rule, 14_440_000, 0, 15_000);
        assertEquals(14_440_000, rule.thresholdMicrovolts());
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        minute(rule, 14_439_999, 0, 15_000);
        assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
        minute(rule, 14_200_000, 0, 25_000);
        assertEquals(THRESHOLD_MICROVOLTS, rule.thresholdMicrovolts());
        minute(rule, 14_200_000, 0, ABSENT);
        assertEquals(THRESHOLD_MICROVOLTS, rule.thresholdMicrovolts());
        // 24 uV a millikelvin x 0.001: halves away from zero, -1 mK is 24 uV, here 1 m°C.
        minute(rule, 14_200_000, 0, 25_001);
        assertEquals(THRESHOLD_MICROVOLTS - 24, rule.thresholdMicrovolts());
    }

    @Test
    void looksForFullAgainOnceEnoughWasDischarged() {
        proveFull();
        // 2 Ah in steps of 0.2 Ah; the ninth leaves 1.8 Ah, the tenth is exactly the limit
        for (int i = 0; i < 9; i++) {
            assertEquals(RuleOutcome.NONE, minute(12_500_000, -12_000_000));
        }
        assertStands(RuleState.NOT_ARMED, RuleReason.FULL_PROVEN, 0);
        assertEquals(9 * AMP_HOUR / 5, rule.dischargedNanocoulombs());
        assertEquals(RuleOutcome.ARMED, minute(12_500_000, -12_000_000));
        assertStands(RuleState.WAITING, RuleReason.ARMED_BY_DISCHARGE, 0);
        proveFull();
        assertEquals(2, rule.fullCount());
    }

    @Test
    void whatIsChargedComesOffTheDischargeButNoFurtherThanZero() {
        proveFull();
        minute(12_500_000, -12_000_000);
        minute(14_400_000, 6_000_000);
        assertEquals(AMP_HOUR / 10, rule.dischargedNanocoulombs());
        minute(14_400_000, 60_000_000);
        assertEquals(0, rule.dischargedNanocoulombs());
        assertEquals(RuleState.NOT_ARMED, rule.state());
    }

    @Test
    void doesNotProveFullTwiceWithoutADischarge() {
        proveFull();
        for (int i = 0; i < 10; i++) {
            assertEquals(RuleOutcome.NONE, minute(THRESHOLD_MICROVOLTS, 0));
        }
        assertEquals(1, rule.fullCount());
    }

    @Test
    void aDeclaredFullDisarmsAndADeclaredRestLooksAgain() {
        rule.declareFull();
        assertEquals(RuleState.NOT_ARMED, rule.state());
        assertEquals(0, rule.fullCount());
        assertEquals(RuleOutcome.NONE, minute(THRESHOLD_MICROVOLTS, 0));
        rule.declareNotFull();
        assertStands(RuleState.WAITING, RuleReason.NO_MINUTE_YET, 0);
        proveFull();
    }

    @Test
    void aDeclarationEndsTheHold() {
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS, 0);
        rule.declareNotFull();
        assertEquals(RuleOutcome.NONE, minute(THRESHOLD_MICROVOLTS, 0));
        assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    @Test
    void missingSamplesEndTheHoldAndNothingElse() {
        minute(THRESHOLD_MICROVOLTS, 0);
        minute(THRESHOLD_MICROVOLTS, 0);
        rule.samplesMissing();
        assertStands(RuleState.WAITING, RuleReason.SAMPLES_MISSING, 0);
        proveFull();
        rule.samplesMissing();
        assertStands(RuleState.NOT_ARMED, RuleReason.FULL_PROVEN, 0);
    }

    @Test
    void switchedOffItNeverSpeaks() {
        FullChargeRule off = new FullChargeRule(settings().set(Setting.ABSORPTION, 0).build());
        for (int i = 0; i < 5; i++) {
            assertEquals(RuleOutcome.NONE, minute(off, 60_000_000, 0, ABSENT));
        }
        off.declareFull();
        off.declareNotFull();
        off.samplesMissing();
        assertEquals(RuleState.WAITING, off.state());
        assertEquals(RuleReason.SWITCHED_OFF, off.reason());
        assertEquals(0, off.fullCount());
    }

    @Test
    void aHoldOfOneMinuteProvesAtOnce() {
        FullChargeRule quick = new FullChargeRule(settings().set(Setting.HOLD, 1).build());
        assertEquals(
                RuleOutcome.SET_TO_FULL,
                minute(quick, THRESHOLD_MICROVOLTS, TAPER_MICROAMPS, ABSENT));
    }
}
