package org.gaugebench.core.rules;

import static org.gaugebench.core.rules.FullChargeFixture.TAPER;
import static org.gaugebench.core.rules.FullChargeFixture.THRESHOLD;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The other two ways to full: a plateau (F10) and a long float (F11). */
class FullChargePathsTest {
    private static final int AMP = Minutes.AMP;

    /** 13.5 V less a 120th, cut off to 112 mV. */
    private static final int FLOAT_THRESHOLD = 13_388_000;

    private static FullChargeFixture tired(Object... settings) {
        FullChargeFixture f = new FullChargeFixture(settings).bulk();
        f.atLimit = true;
        return f;
    }

    @Test
    void aCurrentThatNoLongerFallsProvesFullAfterThePlateauHold() {
        FullChargeFixture f = tired();
        f.silent(59, THRESHOLD, 3 * AMP);
        f.assertStands(RuleState.HOLDING, RuleReason.PLATEAU_RUNNING, 0);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(THRESHOLD, 3 * AMP));
        f.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_BY_PLATEAU, 0);
        assertEquals(50_000, f.rule.residualPartsPerMillion());
        assertFalse(f.rule.isEvidence());
    }

    /** Four tapers are no plateau, a microamp less is. */
    @Test
    void thePlateauLiesUnderFourTapers() {
        assertEquals(0, tired().minutesUntilFull(200, THRESHOLD, 4 * TAPER));
        assertEquals(60, tired().minutesUntilFull(200, THRESHOLD, 4 * TAPER - 1));
    }

    /** 4 A may rise to 4.210526 A (a twentieth of that is 210,526 uA) and no microamp further. */
    @Test
    void thePlateauMovesByATwentiethAtMost() {
        FullChargeFixture f = tired();
        f.silent(59, THRESHOLD, 4 * AMP);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(THRESHOLD, 4_210_526));
        f = tired();
        f.silent(59, THRESHOLD, 4 * AMP);
        assertEquals(RuleOutcome.NONE, f.minute(THRESHOLD, 4_210_528));
        assertEquals(59, f.minutesUntilFull(59, THRESHOLD, 4_210_528));
    }

    @Test
    void aTaperThatStillFallsIsNoPlateau() {
        FullChargeFixture f = tired();
        // time constant of two hours: a minute takes 0.83 % off; down to 2.1 A
        for (int microamps = 7_900_000; microamps > 2_100_000; microamps -= microamps / 120) {
            f.silent(1, THRESHOLD, microamps);
        }
    }

    @Test
    void aVoltageThatMovesIsNoPlateau() {
        FullChargeFixture f = tired();
        for (int i = 0; i < 300; i++) {
            f.silent(1, THRESHOLD + i % 50 * 10_000, 3 * AMP);
        }
        FullChargeFixture anyVoltage = tired(Setting.FLATNESS, 0);
        for (int i = 0; i < 59; i++) {
            anyVoltage.silent(1, THRESHOLD + i % 50 * 10_000, 3 * AMP);
        }
        assertEquals(RuleOutcome.SET_TO_FULL, anyVoltage.minute(THRESHOLD, 3 * AMP));
    }

    @Test
    void aPlateauUnderTheLimitOfTheCountProvesNothing() {
        FullChargeFixture f = tired();
        f.atLimit = false;
        assertEquals(0, f.minutesUntilFull(300, THRESHOLD, 3 * AMP));
        f.assertStands(RuleState.WAITING, RuleReason.CURRENT_ABOVE_TAPER, 0);
    }

    @Test
    void aPlateauIsForgivenNothing() {
        FullChargeFixture f = tired();
        f.silent(59, THRESHOLD, 3 * AMP).silent(1, THRESHOLD - 1, 3 * AMP);
        assertEquals(60, f.minutesUntilFull(60, THRESHOLD, 3 * AMP));
    }

    @Test
    void plateauHoldZeroSwitchesThePathOff() {
        FullChargeFixture f = tired(Setting.PLATEAU_HOLD, 0);
        assertEquals(0, f.minutesUntilFull(700, THRESHOLD, 3 * AMP));
    }

    @Test
    void aDayOfFloatWithNextToNoCurrentProvesFull() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.silent(Minutes.DAY - 1, FLOAT_THRESHOLD, 500_000);
        f.assertStands(RuleState.HOLDING, RuleReason.FLOAT_RUNNING, 0);
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(FLOAT_THRESHOLD, 500_000));
        f.assertStands(RuleState.NOT_ARMED, RuleReason.PROVEN_BY_FLOAT, 0);
        assertEquals(50_000, f.rule.residualPartsPerMillion());
    }

    /** 0.5 % of the capacity in, 0.05 % out, and the float voltage less its margin. */
    @Test
    void theFloatHasItsEdges() {
        int[][] outside = {
            {FLOAT_THRESHOLD - 1, 0}, {FLOAT_THRESHOLD, 500_001}, {FLOAT_THRESHOLD, -50_001}
        };
        for (int[] point : outside) {
            FullChargeFixture f = new FullChargeFixture().bulk();
            assertEquals(0, f.minutesUntilFull(2 * Minutes.DAY, point[0], point[1]));
        }
        FullChargeFixture inside = new FullChargeFixture().bulk();
        assertEquals(Minutes.DAY, inside.minutesUntilFull(Minutes.DAY, FLOAT_THRESHOLD, -50_000));
    }

    @Test
    void theFloatVoltageMovesWithTheTemperature() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.millicelsius = 15_000;
        assertEquals(0, f.minutesUntilFull(2 * Minutes.DAY, FLOAT_THRESHOLD + 239_999, 0));
        f = new FullChargeFixture().bulk();
        f.millicelsius = 15_000;
        assertEquals(Minutes.DAY, f.minutesUntilFull(Minutes.DAY, FLOAT_THRESHOLD + 240_000, 0));
    }

    /** Behind an open isolator it looks the same: the count decides, to the last ppm. */
    @Test
    void aFloatThatTheCountContradictsProvesNothing() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.upperEdge = 949_999;
        assertEquals(0, f.minutesUntilFull(10 * Minutes.DAY, FLOAT_THRESHOLD, 0));
        f.upperEdge = 950_000;
        assertEquals(1, f.minutesUntilFull(1, FLOAT_THRESHOLD, 0));
    }

    @Test
    void isKeptFullWhileAChargerHoldsItAndNothingIsDischarged() {
        FullChargeFixture f = new FullChargeFixture();
        f.minute(FLOAT_THRESHOLD, 0);
        assertFalse(f.rule.isKeptFull(), "full was never proven");
        f.rule.declareFull();
        f.minute(FLOAT_THRESHOLD, 0);
        assertTrue(f.rule.isKeptFull());
        f.minute(FLOAT_THRESHOLD - 1, 0);
        assertFalse(f.rule.isKeptFull(), "no charger holds it");
    }

    @Test
    void aFloatWithoutAnyFlowBeforeProvesNothing() {
        FullChargeFixture f = new FullChargeFixture();
        assertEquals(0, f.minutesUntilFull(2 * Minutes.DAY, FLOAT_THRESHOLD, 0));
    }

    @Test
    void doubtfulMinutesAreNoFloat() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.silent(Minutes.DAY - 1, FLOAT_THRESHOLD, 300_000);
        assertEquals(RuleOutcome.NONE, f.doubtful(FLOAT_THRESHOLD, 300_000));
        assertEquals(RuleOutcome.SET_TO_FULL, f.minute(FLOAT_THRESHOLD, 300_000));

        f = new FullChargeFixture().bulk();
        for (int i = 0; i < 2 * Minutes.DAY; i++) {
            assertEquals(RuleOutcome.NONE, f.doubtful(FLOAT_THRESHOLD, 300_000));
        }
    }

    @Test
    void floatVoltageZeroSwitchesThePathOff() {
        FullChargeFixture f = new FullChargeFixture(Setting.FLOAT_VOLTAGE, 0).bulk();
        assertEquals(0, f.minutesUntilFull(2 * Minutes.DAY, 13_800_000, 300_000));
        f.assertStands(RuleState.WAITING, RuleReason.VOLTAGE_UNDER_THRESHOLD, 0);
    }

    /** F6 in F11, by the current alone: two minutes pause, the third takes one back. */
    @Test
    void aGapRunsTheFloatBack() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.silent(Minutes.DAY - 10, FLOAT_THRESHOLD, 0).silent(3, FLOAT_THRESHOLD, -50_001);
        assertEquals(11, f.minutesUntilFull(20, FLOAT_THRESHOLD, 0));
    }

    @Test
    void aQuarterOfAnHourBeginsTheFloatAnew() {
        FullChargeFixture f = new FullChargeFixture().bulk();
        f.silent(Minutes.DAY - 1, FLOAT_THRESHOLD, 0).silent(15, FLOAT_THRESHOLD, -50_001);
        assertEquals(Minutes.DAY, f.minutesUntilFull(2 * Minutes.DAY, FLOAT_THRESHOLD, 0));
    }

    /** G15: the rule looks from now, on every path. */
    @Test
    void aDeclarationBeginsPlateauAndFloatAnew() {
        FullChargeFixture f = tired();
        f.silent(59, THRESHOLD, 3 * AMP);
        f.rule.declareNotFull();
        assertEquals(60, f.minutesUntilFull(60, THRESHOLD, 3 * AMP));
        f = new FullChargeFixture().bulk();
        f.silent(Minutes.DAY - 1, FLOAT_THRESHOLD, 0);
        f.rule.declareNotFull();
        assertEquals(Minutes.DAY, f.minutesUntilFull(Minutes.DAY, FLOAT_THRESHOLD, 0));
    }

    /** Without a flatness the current alone tells a plateau from what came before it. */
    @Test
    void aPlateauOfAnyVoltageIsForgivenNothingEither() {
        FullChargeFixture f = tired(Setting.FLATNESS, 0);
        f.silent(59, THRESHOLD, 3 * AMP).silent(1, THRESHOLD - 1, 3 * AMP);
        assertEquals(60, f.minutesUntilFull(60, THRESHOLD, 3 * AMP));
    }

    /** 0.06 V above the last plateau and then 0.11: the hour itself moved by 0.05 V only. */
    @Test
    void aPlateauThatBeginsAnewTakesTheVoltageAsItFindsIt() {
        FullChargeFixture f = tired();
        f.silent(30, THRESHOLD, 3 * AMP).silent(1, THRESHOLD - 1, 3 * AMP);
        f.silent(30, THRESHOLD + 60_000, 3 * AMP);
        assertEquals(30, f.minutesUntilFull(30, THRESHOLD + 110_000, 3 * AMP));
    }

    /** D7: with float 0 there is no float voltage at which a charger could keep it full. */
    @Test
    void withoutAFloatVoltageNothingIsKeptFull() {
        FullChargeFixture f = new FullChargeFixture(Setting.FLOAT_VOLTAGE, 0);
        f.rule.declareFull();
        f.minute(12_700_000, 0);
        assertFalse(f.rule.isKeptFull());
    }
}
