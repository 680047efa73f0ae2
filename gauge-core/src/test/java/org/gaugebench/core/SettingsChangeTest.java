package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
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

/** What an edit of the settings keeps, changes, widens and drops, while the gauge runs. */
class SettingsChangeTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;

    private final StrictStore store = new StrictStore(3, 256);
    private final GaugeSettings settings =
            GaugeFixture.roundNumbers()
                    .set(Setting.QUIET_TIME, 0)
                    .set(Setting.HOLD, 2)
                    .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                    .build();
    private final GaugeFixture fixture = new GaugeFixture(settings, store, 0, OffTime.EXACT);

    private void edit(Setting setting, long value) {
        fixture.gauge.changeSettings(settings.toBuilder().set(setting, value).build());
    }

    @Test
    void anotherCapacityKeepsThePercentageAndWidensTheBand() {
        fixture.declare(600_000);
        edit(Setting.CAPACITY, 150_000);
        assertEquals(600_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(90 * AMP_HOUR, fixture.charge());
        assertEquals(30 * AMP_HOUR, fixture.lastValue(Event.SETTINGS_CHANGED));
        assertEquals(150_000, fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
    }

    @Test
    void aFullBatteryStaysFullAtAnotherCapacity() {
        fixture.volts(14_400).minutes(2, AMP);
        edit(Setting.CAPACITY, 150_000);
        assertEquals(150 * AMP_HOUR, fixture.charge());
        assertEquals(RuleState.NOT_ARMED, fixture.read().ruleState);
        assertEquals(Trust.PROVEN, fixture.read().trust);
    }

    @Test
    void anotherEfficiencyChangesNothingThatWasCounted() {
        fixture.declare(600_000);
        fixture.minutes(30, 10 * AMP).tick(10 * AMP, 30_000);
        long before = fixture.charge();
        long in = fixture.register(Register.IN_NANOCOULOMBS);
        edit(Setting.COULOMBIC_EFFICIENCY, 500_000);
        assertEquals(before, fixture.charge());
        assertEquals(0, fixture.lastValue(Event.SETTINGS_CHANGED));
        assertEquals(in, fixture.register(Register.IN_NANOCOULOMBS));
        assertEquals(100_000, fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        // From now on half of what comes in is kept.
        fixture.minutes(6, 10 * AMP);
        assertEquals(before + AMP_HOUR / 2, fixture.charge());
    }

    /** The minute under way belongs to the old settings and ends with them. */
    @Test
    void theMinuteUnderWayEndsWithTheOldSettings() {
        fixture.declare(600_000);
        fixture.tick(AMP, 30_000);
        long millis = fixture.register(Register.BAND_MILLIS);
        edit(Setting.TAPER, 30_000);
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(millis + 30_000, fixture.register(Register.BAND_MILLIS));
    }

    @Test
    void anEditBeginsTheQuietTimeAndTheHoldAnew() {
        fixture.volts(14_400).minutes(1, AMP);
        edit(Setting.QUIET_TIME, 3);
        fixture.minutes(3, AMP);
        assertEquals(RuleReason.QUIET_TIME, fixture.read().ruleReason);
        fixture.minutes(1, AMP);
        assertEquals(0, fixture.times(Event.SET_TO_FULL));
        fixture.minutes(1, AMP);
        assertEquals(1, fixture.times(Event.SET_TO_FULL));
    }

    @Test
    void anEditIsSavedAtOnceUnderItsOwnSettings() {
        fixture.declare(600_000);
        fixture.ticks(11, 0, 1_000);
        long saves = fixture.register(Register.SAVES);
        GaugeSettings changed = settings.toBuilder().set(Setting.TAPER, 30_000).build();
        fixture.gauge.changeSettings(changed);
        fixture.tick(0, 1_000);
        assertEquals(saves + 1, fixture.register(Register.SAVES));
        GaugeFixture after = new GaugeFixture(changed, store, 0, OffTime.EXACT);
        assertEquals(0, after.times(Event.SETTINGS_CHANGED));
        assertEquals(600_000, after.read().stateOfChargePartsPerMillion);
    }

    @Test
    void anotherChemistryIsAnotherBatteryOnTheSameConverter() {
        fixture.declare(600_000);
        fixture.minutes(1, 800);
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        long zero = fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8);
        assertTrue(zero > 0);
        edit(Setting.CHEMISTRY, 4);
        assertEquals(Readout.NOT_KNOWN, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(1, fixture.times(Event.NEW_BATTERY));
        assertEquals(0, fixture.times(Event.SETTINGS_CHANGED));
        assertEquals(zero, fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8));
        fixture.tick(800, 1_000);
        assertEquals(0, fixture.read().currentMicroamps);
    }

    @Test
    void anotherConverterDropsTheAdjustment() {
        fixture.minutes(1, 800);
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        edit(Setting.SHUNT_CONVERTER_BITS, 20);
        assertEquals(0, fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8));
    }

    @Test
    void aCountThatNobodyWasShownHasNoStep() {
        fixture.minutes(30, AMP);
        edit(Setting.CAPACITY, 150_000);
        assertEquals(0, fixture.lastValue(Event.SETTINGS_CHANGED));
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
    }

    @Test
    void switchingTheFullChargeRuleOffAndOnKeepsWhatItHadProven() {
        fixture.volts(14_400).minutes(2, AMP);
        edit(Setting.ABSORPTION, 0);
        assertEquals(1, fixture.register(Register.FULL_COUNT));
        assertEquals(RuleReason.SWITCHED_OFF, fixture.read().ruleReason);
        assertEquals(1_000_000, fixture.read().stateOfChargePartsPerMillion);
        edit(Setting.ABSORPTION, 14_400);
        assertEquals(1, fixture.register(Register.FULL_COUNT));
    }

    /** S4: the same converter reads as wrong as before, so it is corrected as before. */
    @Test
    void anAdjustmentOutlivesAnEdit() {
        fixture.minutes(1, 800);
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        long zero = fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8);
        edit(Setting.TAPER, 30_000);
        assertEquals(zero, fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8));
        fixture.tick(800, 1_000);
        assertEquals(0, fixture.read().currentMicroamps);
    }

    /** S1 and D7: the days without a full charge do not begin anew. */
    @Test
    void theTimeSinceFullOutlivesAnEdit() {
        fixture.minutes(90, -AMP);
        edit(Setting.TAPER, 30_000);
        assertEquals(90, fixture.register(Register.MINUTES_SINCE_FULL));
    }

    /** S1 and E5: the early end before the edit is the first of two, and still disarms. */
    @Test
    void anEarlyEndOutlivesAnEdit() {
        fixture.declare(600_000);
        fixture.volts(10_600).minutes(5, -2 * AMP);
        assertEquals(1, fixture.times(Event.EARLY_EMPTY));
        edit(Setting.TAPER, 30_000);
        fixture.minutes(10, -2 * AMP);
        assertEquals(1, fixture.times(Event.EARLY_EMPTY), "not armed");
        fixture.volts(13_000).minutes(25, 5 * AMP);
        edit(Setting.TAPER, 20_000);
        fixture.volts(10_600).minutes(5, -2 * AMP);
        assertEquals(1, fixture.times(Event.SET_TO_EMPTY), "the second at the same count");
    }

    /** S2: what went out grows with the capacity and stays what went out. */
    @Test
    void aLargerCapacityKeepsTheSignOfWhatMoved() {
        fixture.declare(600_000);
        fixture.minutes(60, -10 * AMP);
        edit(Setting.CAPACITY, 150_000);
        assertEquals(-15 * AMP_HOUR, fixture.register(Register.BAND_NET_NANOCOULOMBS));
        assertEquals(15 * AMP_HOUR, fixture.register(Register.BAND_GROSS_NANOCOULOMBS));
    }
}
