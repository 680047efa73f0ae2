package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * What a rule's word does to a whole gauge: count, band, events, faults, memory. The rules' own
 * tests say when they speak.
 */
class RuleEffectsTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;
    private static final int EMPTY_MILLIVOLTS = 10_600;

    /** Rested at 12.4 V: 50 %, by the 80 mV of the bound 45 to 60 %. */
    private static final int HALF_MILLIVOLTS = 12_400;

    /** The rest rule compares after twelve hours without charge. */
    private static final int REST_MINUTES = 12 * 60;

    private static GaugeSettings.Builder settings() {
        return GaugeFixture.roundNumbers()
                .set(Setting.HOLD, 2)
                .set(Setting.QUIET_TIME, 0)
                .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000);
    }

    private final GaugeFixture fixture = new GaugeFixture(settings().build());

    /** Five light minutes at the empty voltage: the fifth is an end (E3). */
    private static void end(GaugeFixture gauge) {
        gauge.volts(EMPTY_MILLIVOLTS).minutes(5, -2 * AMP);
    }

    /** E4: 1 % of 100 Ah, known to 3 %; ten minutes ampere went since the declaration. */
    @Test
    void anEndThatTheCountAllowsSetsCountAndBand() {
        fixture.declare(100_000);
        end(fixture);
        assertEquals(AMP_HOUR, fixture.charge());
        assertEquals(
                AMP_HOUR - (10 * AMP_HOUR - 10 * AMP_HOUR / 60),
                fixture.lastValue(Event.SET_TO_EMPTY));
        assertEquals(30_000, fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        assertEquals(Trust.PROVEN, fixture.read().trust);
        assertEquals(1, fixture.register(Register.EMPTY_COUNT));
    }

    /** E5 and D9: nothing is set; the event tells the count, and the fault stands. */
    @Test
    void anEarlyEndIsToldAndChangesNoCount() {
        fixture.declare(600_000);
        end(fixture);
        assertEquals(1, fixture.times(Event.EARLY_EMPTY));
        // 60 Ah less ten minutes ampere, of 100 Ah
        assertEquals(598_333, fixture.lastValue(Event.EARLY_EMPTY));
        assertEquals(60 * AMP_HOUR - 10 * AMP_HOUR / 60, fixture.charge());
        assertEquals(100_000, fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        assertEquals(Fault.EMPTY_EARLY.bit(), fixture.read().faultBits);
        assertEquals(Trust.DECLARED, fixture.read().trust);
    }

    /**
     * R5, in floating point: P from the band a minute before, R 10 %; the table rounds by 1 ppm.
     */
    @Test
    void aRestMovesTheCountAndTheBandByTheirWeights() {
        fixture.declare(700_000);
        fixture.volts(HALF_MILLIVOLTS).minutes(REST_MINUTES - 1, 0);
        Readout before = fixture.read();
        double p = before.stateOfChargePartsPerMillion - before.lowerEdgePartsPerMillion;
        double r = 100_000;
        assertEquals(0, fixture.times(Event.CORRECTED_BY_REST));
        fixture.minutes(1, 0);
        double weight = p * p / (p * p + r * r);
        // A minute of growth of P and the 16 bits of the weight are some 10 ppm.
        assertEquals(700_000 - 200_000 * weight, fixture.read().stateOfChargePartsPerMillion, 20);
        assertEquals(
                p * r / Math.sqrt(p * p + r * r),
                (double) fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION),
                20);
        assertEquals(fixture.charge() - 70 * AMP_HOUR, fixture.lastValue(Event.CORRECTED_BY_REST));
        assertEquals(Trust.PROVEN, fixture.read().trust);
    }

    /**
     * R6: 46 % within 5 %, and a voltage that says 45 to 60: worth less than the count, but nothing
     * lies under 45 %.
     */
    @Test
    void aRestThatIsWorthLessThanTheCountClipsTheBandOnly() {
        GaugeFixture narrow =
                new GaugeFixture(settings().set(Setting.DECLARED_RESIDUAL, 50_000).build());
        narrow.declare(460_000);
        narrow.volts(HALF_MILLIVOLTS).minutes(REST_MINUTES - 1, 0);
        Readout readout = narrow.read();
        int upper = readout.upperEdgePartsPerMillion;
        assertTrue(readout.lowerEdgePartsPerMillion < 405_000);
        narrow.minutes(1, 0);
        narrow.read();
        // What the fact's own growth rounds up in its first moment; see BandRig.ROUNDING.
        assertEquals(450_000, readout.lowerEdgePartsPerMillion, 20);
        assertEquals(upper, readout.upperEdgePartsPerMillion, 20);
        assertEquals(460_000, readout.stateOfChargePartsPerMillion);
        assertEquals(0, narrow.times(Event.CORRECTED_BY_REST));
    }

    /**
     * A step so large that charge alone never asks for a save: full, empty, rest and a declaration
     * are each saved at once (M2). An armed rule, an early end and a clipped band are no anchors.
     */
    @Test
    void anAnchorIsSavedAtOnceAndNothingElseIs() {
        GaugeSettings rare = settings().set(Setting.SAVE_STEP, 200_000).build();
        GaugeFixture gauge = new GaugeFixture(rare, new StrictStore(3, 256), 0, OffTime.EXACT);
        gauge.declare(950_000);
        gauge.ticks(60, 0, 1_000);
        assertEquals(1, gauge.register(Register.SAVES));
        gauge.volts(14_400).minutes(2, AMP);
        assertEquals(1, gauge.times(Event.SET_TO_FULL));
        assertEquals(2, gauge.register(Register.SAVES));
        gauge.volts(12_500).minutes(120, -AMP);
        assertEquals(1, gauge.times(Event.FULL_RULE_ARMED));
        end(gauge);
        assertEquals(1, gauge.times(Event.EARLY_EMPTY));
        assertEquals(2, gauge.register(Register.SAVES));
        // The empty rule looks again after 2 Ah; the declaration is a save of its own.
        gauge.volts(13_000).minutes(30, 5 * AMP);
        gauge.declare(100_000);
        gauge.minutes(1, -AMP);
        assertEquals(3, gauge.register(Register.SAVES));
        end(gauge);
        assertEquals(1, gauge.times(Event.SET_TO_EMPTY));
        assertEquals(4, gauge.register(Register.SAVES));
        gauge.declare(700_000);
        gauge.volts(HALF_MILLIVOLTS).minutes(REST_MINUTES / 2, 0);
        assertEquals(5, gauge.register(Register.SAVES));
        gauge.minutes(REST_MINUTES / 2, 0);
        assertEquals(1, gauge.times(Event.CORRECTED_BY_REST));
        assertEquals(6, gauge.register(Register.SAVES));
    }

    /** T7: 15 % within 10 is low; full proven against it is not, in that very minute. */
    @Test
    void whatFollowsFromTheBandFollowsAnAnchorInItsMinute() {
        fixture.declare(150_000);
        assertTrue(fixture.read().lowCharge);
        fixture.volts(14_400).minutes(7, AMP);
        assertTrue(fixture.read().lowCharge);
        fixture.minutes(1, AMP);
        assertEquals(1, fixture.times(Event.SET_TO_FULL));
        assertFalse(fixture.read().lowCharge);
    }

    /** G15: the rule looks from now, and a proof is taken away. */
    @Test
    void aDeclarationUnderFullLooksForFullFromNow() {
        fixture.declare(1_000_000);
        assertEquals(RuleState.NOT_ARMED, fixture.read().ruleState);
        fixture.declare(500_000);
        assertEquals(RuleState.WAITING, fixture.read().ruleState);
        assertEquals(RuleReason.DECLARED_NOT_FULL, fixture.read().ruleReason);
        fixture.volts(14_400).minutes(1, AMP);
        assertEquals(RuleState.HOLDING, fixture.read().ruleState);
        fixture.declare(500_000);
        fixture.minutes(1, AMP);
        assertEquals(0, fixture.times(Event.SET_TO_FULL), "the hold began anew");
    }

    /** D7 counts from a declared full too, and from no other declaration. */
    @Test
    void onlyADeclaredFullEndsTheTimeSinceFull() {
        fixture.minutes(90, -AMP);
        fixture.declare(999_999);
        assertEquals(90, fixture.register(Register.MINUTES_SINCE_FULL));
        fixture.declare(1_000_000);
        assertEquals(0, fixture.register(Register.MINUTES_SINCE_FULL));
    }

    /** The other battery was full once and ended early once; of this one nothing is known. */
    @Test
    void theRulesBeginAnewOnANewBattery() {
        fixture.volts(14_400).minutes(2, AMP);
        end(fixture);
        assertEquals(1, fixture.times(Event.EARLY_EMPTY));
        assertEquals(RuleState.NOT_ARMED, fixture.read().ruleState);
        fixture.tick(-AMP, 30_000);
        fixture.gauge.command(Command.NEW_BATTERY, 0);
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS), "the old one's minute ended");
        assertEquals(Readout.NOT_KNOWN, fixture.read().shownPercent, "shown at once");
        assertEquals(1_000_000, fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        assertEquals(0, fixture.register(Register.FULL_COUNT));
        assertEquals(RuleState.WAITING, fixture.read().ruleState);
        // The same end at nearly the same count is this battery's first, so it is not believed.
        fixture.declare(999_000);
        fixture.minutes(1, -2 * AMP);
        assertEquals(2, fixture.times(Event.EARLY_EMPTY));
        assertEquals(0, fixture.times(Event.SET_TO_EMPTY));
    }
}
