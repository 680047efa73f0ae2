package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** 100 Ah, empty at 10.6 V and at most 10 A, heavy above 25 A, armed again by 2 Ah (E rules). */
class EmptyRuleTest {
    private static final int AMP = Minutes.AMP;
    private static final int EMPTY = 10_600_000;

    private final Minutes minutes = new Minutes();
    private final EmptyRule rule = new EmptyRule(Minutes.settings(Setting.EMPTY_CURRENT, 100_000));
    private int millicelsius = Sample.TEMPERATURE_ABSENT;
    private int shown = 100_000;
    private int lowerEdge = 50_000;

    EmptyRuleTest() {
        settle();
    }

    /** Five minutes without a heavy load. */
    private void settle() {
        for (int i = 0; i < 5; i++) {
            assertEquals(RuleOutcome.NONE, minute(12_000_000, -AMP));
        }
    }

    private RuleOutcome minute(int microvolts, int microamps) {
        return rule.judge(minutes.still(microvolts, microamps), millicelsius, shown, lowerEdge);
    }

    private void rearm() {
        for (int i = 0; i < 12; i++) {
            minute(13_000_000, 10 * AMP);
        }
    }

    @Test
    void exactlyAtTheVoltageAndTheCurrentItIsEmpty() {
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -10 * AMP));
        assertEquals(1, rule.emptyCount());
        assertFalse(rule.isArmed());
    }

    @Test
    void aMicrovoltMoreIsNotEmpty() {
        assertEquals(RuleOutcome.NONE, minute(EMPTY + 1, -AMP));
    }

    @Test
    void theHighestVoltageOfTheMinuteCounts() {
        assertEquals(
                RuleOutcome.NONE,
                rule.judge(
                        minutes.of(EMPTY, EMPTY + 1, -AMP, -AMP), millicelsius, shown, lowerEdge));
    }

    @Test
    void aMicroampMoreSagsTooFar() {
        assertEquals(RuleOutcome.NONE, minute(EMPTY, -10 * AMP - 1));
    }

    @Test
    void withoutADischargeItIsNotEmpty() {
        assertEquals(RuleOutcome.NONE, minute(EMPTY, 0));
        assertEquals(RuleOutcome.NONE, minute(EMPTY, AMP));
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -1));
    }

    @Test
    void noVoltageAtAllIsAnOpenLeadNotAnEmptyBattery() {
        assertEquals(RuleOutcome.NONE, minute(0, -AMP));
    }

    @Test
    void aDoubtfulMinuteIsNotEmpty() {
        assertEquals(
                RuleOutcome.NONE,
                rule.judge(minutes.doubtful(EMPTY, -AMP), millicelsius, shown, lowerEdge));
    }

    /**
     * 10 A and more sag to 10 V; the sag goes on for four minutes after and is believed in the
     * fifth.
     */
    @Test
    void aHeavyLoadAsksForFiveMinutes() {
        assertEquals(RuleOutcome.NONE, minute(10_000_000, -10 * AMP - 1));
        for (int i = 0; i < 4; i++) {
            assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
        }
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void aQuarterOfTheCapacityIsHeavyWhateverTheEmptyCurrent() {
        EmptyRule rule = new EmptyRule(Minutes.settings(Setting.EMPTY_CURRENT, 300_000));
        drained(rule, -25 * AMP);
        assertEquals(RuleOutcome.SET_TO_EMPTY, judge(rule, -AMP));
        rule = new EmptyRule(Minutes.settings(Setting.EMPTY_CURRENT, 300_000));
        drained(rule, -25 * AMP - 1);
        assertEquals(RuleOutcome.NONE, judge(rule, -AMP));
    }

    /** Past the quiet time, then one minute with a load above the voltage of empty. */
    private void drained(EmptyRule rule, int load) {
        for (int i = 0; i < 30; i++) {
            judge(rule, 12_000_000, -AMP);
        }
        judge(rule, 12_000_000, load);
    }

    private RuleOutcome judge(EmptyRule rule, int microamps) {
        return judge(rule, EMPTY, microamps);
    }

    private RuleOutcome judge(EmptyRule rule, int microvolts, int microamps) {
        return rule.judge(minutes.still(microvolts, microamps), millicelsius, shown, lowerEdge);
    }

    @Test
    void exactlyTheEmptyCurrentIsNotHeavy() {
        minute(12_000_000, -10 * AMP);
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void afterAStartOrAGapAHeavyLoadMayHaveBeen() {
        rule.samplesMissing();
        for (int i = 0; i < 4; i++) {
            assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
        }
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
        EmptyRule fresh = new EmptyRule(Minutes.settings(Setting.EMPTY_CURRENT, 100_000));
        assertEquals(
                RuleOutcome.NONE,
                fresh.judge(minutes.still(EMPTY, -AMP), millicelsius, shown, lowerEdge));
    }

    @Test
    void theColdLooksEmptyAndIsNot() {
        millicelsius = 5_000;
        assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
        millicelsius = 5_001;
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void aCountThatContradictsIsKeptAndTold() {
        shown = 400_000;
        lowerEdge = 150_001;
        assertEquals(RuleOutcome.EARLY_EMPTY, minute(EMPTY, -AMP));
        assertEquals(400_000, rule.earlyEndPartsPerMillion());
        assertEquals(0, rule.emptyCount());
        assertFalse(rule.isArmed());
    }

    @Test
    void aLowerEdgeOfFifteenPercentDoesNotContradict() {
        shown = 400_000;
        lowerEdge = 150_000;
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void theSecondEarlyEndAtTheSameCountIsBelieved() {
        shown = 400_000;
        lowerEdge = 300_000;
        minute(EMPTY, -AMP);
        rearm();
        settle();
        shown = 450_000;
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
        assertEquals(-1, rule.earlyEndPartsPerMillion());
    }

    @Test
    void aSecondEarlyEndElsewhereIsAFirstOne() {
        shown = 400_000;
        lowerEdge = 300_000;
        minute(EMPTY, -AMP);
        rearm();
        shown = 450_001;
        assertEquals(RuleOutcome.EARLY_EMPTY, minute(EMPTY, -AMP));
        assertEquals(450_001, rule.earlyEndPartsPerMillion());
    }

    /** A load switch that drops and takes the load again for twelve hours is one event. */
    @Test
    void aFlappingLoadSwitchIsOneEnd() {
        minute(EMPTY, -8 * AMP);
        for (int i = 0; i < 360; i++) {
            assertEquals(RuleOutcome.NONE, minute(12_400_000, 0));
            assertEquals(RuleOutcome.NONE, minute(EMPTY, -8 * AMP));
        }
        assertEquals(1, rule.emptyCount());
    }

    @Test
    void isArmedAgainByTwoAmpHours() {
        minute(EMPTY, -AMP);
        for (int i = 0; i < 11; i++) {
            minute(13_000_000, 10 * AMP);
        }
        assertFalse(rule.isArmed());
        minute(13_000_000, 10 * AMP);
        assertTrue(rule.isArmed());
    }

    @Test
    void whatIsDrawnComesOffTheChargeThatArms() {
        minute(EMPTY, -AMP);
        for (int i = 0; i < 100; i++) {
            minute(13_000_000, 10 * AMP);
            minute(12_000_000, -10 * AMP);
        }
        assertFalse(rule.isArmed());
    }

    @Test
    void emptyVoltageZeroSwitchesTheRuleOff() {
        EmptyRule off = new EmptyRule(Minutes.settings(Setting.EMPTY_VOLTAGE, 0));
        for (int i = 0; i < 20; i++) {
            assertEquals(
                    RuleOutcome.NONE,
                    off.judge(minutes.still(1, -AMP), millicelsius, shown, lowerEdge));
        }
    }

    /** E7: ten minutes, the setting's default. */
    @Test
    void noEndIsFoundInTheQuietTime() {
        rule.beginQuietTime();
        for (int i = 0; i < 10; i++) {
            assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
        }
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void aRuleThatTakesOverIsQuietFirst() {
        rule.resume(true, -1);
        for (int i = 0; i < 10; i++) {
            assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
        }
        assertEquals(RuleOutcome.SET_TO_EMPTY, minute(EMPTY, -AMP));
    }

    @Test
    void takesOverWhereAnotherStood() {
        rule.resume(false, 123_456);
        assertFalse(rule.isArmed());
        assertEquals(123_456, rule.earlyEndPartsPerMillion());
        assertEquals(RuleOutcome.NONE, minute(EMPTY, -AMP));
    }

    /** A record may bring any early end; none of them is near a count by an overflow. */
    @Test
    void aSavedEarlyEndBeyondAllCountsAgreesWithNone() {
        rule.resume(true, Integer.MIN_VALUE);
        for (int i = 0; i < 10; i++) {
            minute(12_000_000, -AMP);
        }
        shown = 0;
        lowerEdge = 200_000;
        assertEquals(RuleOutcome.EARLY_EMPTY, minute(EMPTY, -AMP));
    }
}
