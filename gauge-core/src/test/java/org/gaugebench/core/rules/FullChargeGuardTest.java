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

/**
 * What keeps the rule from speaking: flow, quiet time, and the proof already given (F7, F8, F13 to
 * F16).
 */
class FullChargeGuardTest {
    private static final int AMP = Minutes.AMP;

    private final FullChargeFixture f = new FullChargeFixture();

    @Test
    void fullVoltageWithoutAnyFlowIsNoFull() {
        assertEquals(0, f.minutesUntilFull(600, THRESHOLD, 0));
        f.assertStands(RuleState.WAITING, RuleReason.NO_FLOW, 0);
        // exactly 0.2 % of the capacity in an hour is not yet a flow, a microamp more is
        f.silent(1, THRESHOLD, 200_000);
        f.assertStands(RuleState.WAITING, RuleReason.NO_FLOW, 0);
        f.silent(1, THRESHOLD, 200_001);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    /** An offset of 20 mA must not pass for a flow, so the limit grows with the offset bound. */
    @Test
    void anOffsetIsNoFlow() {
        FullChargeFixture coarse = new FullChargeFixture(Setting.OFFSET_BOUND, 300_000);
        coarse.silent(30, THRESHOLD, 600_000);
        coarse.assertStands(RuleState.WAITING, RuleReason.NO_FLOW, 0);
        assertEquals(0, f.minutesUntilFull(600, THRESHOLD, 20_000));
    }

    @Test
    void aStepToNothingVoidsTheEpisodeUntilChargeFlowsAgain() {
        f.silent(20, 13_800_000, 30 * AMP);
        f.silent(1, THRESHOLD, 12 * AMP);
        assertEquals(0, f.minutesUntilFull(600, 14_400_000, 20_000));
        f.assertStands(RuleState.WAITING, RuleReason.FLOW_STOPPED, 0);
        assertTrue(f.rule.flowStopped());
        f.silent(1, 14_400_000, AMP);
        assertFalse(f.rule.flowStopped());
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    /** From two tapers, 4 A, a fall is no step; from a microamp more it is. */
    @Test
    void aStepBeginsAboveTwoTapers() {
        f.silent(1, UNDER, 2 * TAPER).silent(1, THRESHOLD, 0);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        f.silent(1, UNDER, 2 * TAPER + 1).silent(1, THRESHOLD, 0);
        assertEquals(RuleReason.FLOW_STOPPED, f.rule.reason());
    }

    @Test
    void aTaperIsNoStep() {
        for (int microamps = 30 * AMP; microamps > TAPER; microamps = microamps / 4 * 3) {
            f.silent(1, 14_400_000, microamps);
        }
        assertEquals(5, f.minutesUntilFull(10, 14_400_000, AMP));
    }

    /**
     * Yesterday's charge flowed; overnight the lamps took 3 %; this morning the charge is blocked
     * by the cold, and the charger carries the lamps: full voltage, no current.
     */
    @Test
    void yesterdaysFlowDoesNotCountThisMorning() {
        f.bulk();
        f.silent(10 * 60, 12_700_000, -AMP / 3);
        assertEquals(0, f.minutesUntilFull(600, 14_400_000, 0));
        f.assertStands(RuleState.WAITING, RuleReason.NO_FLOW, 0);
    }

    @Test
    void theFlowIsForgottenAfterAQuarterOfAnHourWithoutACharger() {
        f.bulk().silent(14, UNDER, 0);
        f.silent(1, THRESHOLD, 0);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
        f.silent(15, UNDER, 0);
        f.silent(1, THRESHOLD, 0);
        f.assertStands(RuleState.WAITING, RuleReason.NO_FLOW, 0);
    }

    /** A stop may hide in the gap: 14.4 V and nothing after it proves nothing. */
    @Test
    void missingSamplesEndTheHoldAndForgetTheFlow() {
        f.bulk().silent(4, THRESHOLD, TAPER);
        f.rule.samplesMissing();
        f.assertStands(RuleState.WAITING, RuleReason.SAMPLES_MISSING, 0);
        assertEquals(0, f.minutesUntilFull(600, 14_400_000, 0));
        assertEquals(5, f.minutesUntilFull(10, 14_400_000, AMP));
        f.rule.samplesMissing();
        f.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_BY_TAPER, 0);
    }

    @Test
    void inTheQuietTimeNothingIsProven() {
        f.rule.beginQuietTime();
        f.silent(10, THRESHOLD, TAPER);
        f.assertStands(RuleState.WAITING, RuleReason.QUIET_TIME, 0);
        assertEquals(5, f.minutesUntilFull(5, THRESHOLD, TAPER));
    }

    @Test
    void quietTimeZeroIsNone() {
        FullChargeFixture eager = new FullChargeFixture(Setting.QUIET_TIME, 0);
        eager.rule.beginQuietTime();
        assertEquals(5, eager.minutesUntilFull(5, THRESHOLD, TAPER));
    }

    /** The quiet time of a restart passes while the rule is not armed, not days later. */
    @Test
    void theQuietTimePassesWhileNotArmed() {
        f.rule.resume(false, 0, 1);
        f.silent(10, 12_700_000, -AMP);
        while (!f.rule.isArmed()) {
            f.minute(12_500_000, -20 * AMP);
        }
        f.minute(THRESHOLD, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    /** An edit while the condition is true is judged anew: the new rule proves after its hold. */
    @Test
    void aRuleThatTakesOverArmedProvesAfterQuietTimeAndHold() {
        f.rule.resume(true, 0, 3);
        assertEquals(15, f.minutesUntilFull(15, THRESHOLD, TAPER));
        assertEquals(4, f.rule.fullCount());
    }

    @Test
    void looksForFullAgainOnceEnoughWasDischarged() {
        f.bulk().minutesUntilFull(5, THRESHOLD, TAPER);
        // 2 Ah in steps of 0.2 Ah; the tenth is exactly the limit
        f.silent(9, 12_500_000, -12 * AMP);
        f.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_BY_TAPER, 0);
        assertEquals(9 * Minutes.AMP_HOUR / 5, f.rule.dischargedNanocoulombs());
        assertEquals(RuleOutcome.ARMED, f.minute(12_500_000, -12 * AMP));
        f.assertStands(RuleState.WAITING, RuleReason.ARMED_BY_DISCHARGE, 0);
        assertEquals(5, f.bulk().minutesUntilFull(5, THRESHOLD, TAPER));
        assertEquals(2, f.rule.fullCount());
    }

    @Test
    void whatIsChargedComesOffTheDischargeButNoFurtherThanZero() {
        f.bulk().minutesUntilFull(5, THRESHOLD, TAPER);
        f.silent(1, 12_500_000, -12 * AMP);
        f.silent(1, 14_400_000, 6 * AMP);
        assertEquals(Minutes.AMP_HOUR / 10, f.rule.dischargedNanocoulombs());
        f.silent(1, 14_400_000, 60 * AMP);
        assertEquals(0, f.rule.dischargedNanocoulombs());
    }

    /** Absorption, a day of float far under the threshold, absorption: one charge, one proof. */
    @Test
    void aFallOfTheVoltageAloneDoesNotArm() {
        f.bulk().minutesUntilFull(5, THRESHOLD, TAPER);
        f.silent(Minutes.DAY, 13_500_000, AMP / 10).silent(Minutes.DAY, THRESHOLD, AMP / 10);
        assertEquals(1, f.rule.fullCount());
    }

    /** Stored for months beside the shunt: at 98 % at the highest it cannot be full any more. */
    @Test
    void aBandThatExcludesFullArmsToo() {
        f.bulk().minutesUntilFull(5, THRESHOLD, TAPER);
        f.upperEdge = 980_001;
        f.silent(1, 12_700_000, 0);
        f.upperEdge = 980_000;
        assertEquals(RuleOutcome.ARMED, f.minute(12_700_000, 0));
    }

    @Test
    void aDeclaredFullDisarmsAndADeclaredRestLooksAgain() {
        f.rule.declareFull();
        f.assertStands(RuleState.NOT_ARMED, RuleReason.DECLARED_FULL, 0);
        assertEquals(0, f.rule.fullCount());
        assertFalse(f.rule.isEvidence());
        assertEquals(0, f.bulk().minutesUntilFull(60, THRESHOLD, TAPER));
        f.rule.declareNotFull();
        f.assertStands(RuleState.WAITING, RuleReason.DECLARED_NOT_FULL, 0);
        assertEquals(5, f.minutesUntilFull(5, THRESHOLD, TAPER));
    }

    @Test
    void aDeclarationEndsTheHold() {
        f.bulk().silent(4, THRESHOLD, TAPER);
        f.rule.declareNotFull();
        f.silent(1, THRESHOLD, TAPER);
        f.assertStands(RuleState.HOLDING, RuleReason.HOLD_RUNNING, 1);
    }

    @Test
    void takesOverWhatWasDischargedWithinItsLimits() {
        f.rule.resume(false, Minutes.AMP_HOUR, 5);
        f.assertStands(RuleState.NOT_ARMED, RuleReason.QUIET_TIME, 0);
        assertEquals(Minutes.AMP_HOUR, f.rule.dischargedNanocoulombs());
        f.rule.resume(false, Long.MAX_VALUE, 5);
        assertEquals(2 * Minutes.AMP_HOUR, f.rule.dischargedNanocoulombs());
        f.rule.resume(false, Long.MIN_VALUE, 5);
        assertEquals(0, f.rule.dischargedNanocoulombs());
        assertEquals(5, f.rule.fullCount());
    }

    /** F16: what was held does not pass to the rule that takes over, quiet time or none. */
    @Test
    void takingOverArmedHoldsNothing() {
        FullChargeFixture eager = new FullChargeFixture(Setting.QUIET_TIME, 0).bulk();
        eager.silent(4, THRESHOLD, TAPER);
        eager.rule.resume(true, 0, 2);
        eager.assertStands(RuleState.WAITING, RuleReason.QUIET_TIME, 0);
        assertEquals(5, eager.minutesUntilFull(5, THRESHOLD, TAPER));
        assertEquals(3, eager.rule.fullCount());
    }
}
