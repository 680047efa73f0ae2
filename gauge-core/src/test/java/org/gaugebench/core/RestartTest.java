package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** What a restart finds, keeps, widens and says (docs/saved-state.md). */
class RestartTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;
    private static final int STEP = 5_000;
    private static final int DECLARED_RESIDUAL = 100_000;

    private final StrictStore store = new StrictStore(3, 256);

    private static GaugeSettings.Builder settings() {
        return GaugeFixture.roundNumbers().set(Setting.QUIET_TIME, 0).set(Setting.HOLD, 2);
    }

    private GaugeFixture start(GaugeSettings settings, long offMillis, OffTime offTime) {
        return new GaugeFixture(settings, store, offMillis, offTime);
    }

    private GaugeFixture start() {
        return start(settings().build(), 0, OffTime.EXACT);
    }

    /** A gauge that declared 70 % and saved it. */
    private GaugeFixture declared() {
        GaugeFixture fixture = start();
        fixture.declare(700_000);
        fixture.ticks(11, 0, 1_000);
        assertEquals(1, fixture.register(Register.SAVES));
        return fixture;
    }

    @Test
    void anEmptyMemoryKnowsNothingAndLosesNothing() {
        GaugeFixture fixture = start();
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
        assertEquals(0, fixture.times(Event.RESTORED));
        assertEquals(0, fixture.read().faultBits);
    }

    @Test
    void aDeclarationIsSavedAtOnceAndOutlivesThePower() {
        declared();
        GaugeFixture fixture = start();
        assertEquals(700_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(Trust.DECLARED, fixture.read().trust);
        assertEquals(700_000, fixture.lastValue(Event.RESTORED));
    }

    /** A tenth of a percent is no save step; only the command itself can have saved it. */
    @Test
    void aCommandIsSavedThoughTheCountHardlyMoved() {
        GaugeFixture fixture = declared();
        fixture.declare(1_000);
        fixture.ticks(11, 0, 1_000);
        fixture.declare(2_000);
        fixture.ticks(11, 0, 1_000);
        assertEquals(3, fixture.register(Register.SAVES));
        fixture.gauge.command(Command.NEW_BATTERY, 0);
        fixture.ticks(11, 0, 1_000);
        assertEquals(4, fixture.register(Register.SAVES));
        fixture.gauge.command(Command.FORGET_MEASURED, 0);
        fixture.ticks(11, 0, 1_000);
        assertEquals(5, fixture.register(Register.SAVES));
    }

    /** Else a power cut after the swap would bring the old battery's percentage back. */
    @Test
    void aNewBatteryIsSavedAtOnce() {
        GaugeFixture before = declared();
        before.gauge.command(Command.NEW_BATTERY, 0);
        before.ticks(11, 0, 1_000);
        GaugeFixture fixture = start();
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
        assertEquals(Readout.NOT_KNOWN, fixture.read().stateOfChargePartsPerMillion);
    }

    @Test
    void anAdjustmentIsSavedAtOnce() {
        GaugeFixture before = declared();
        before.minutes(2, 800);
        assertEquals(CommandOutcome.DONE, before.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        before.ticks(2, 800, 1_000);
        GaugeFixture fixture = start();
        // to the nearest 256th of a count, cut off
        assertEquals(800 * 256, (int) fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8), 1);
        fixture.tick(800, 1_000);
        assertEquals(0, fixture.read().currentMicroamps);
    }

    /** What moved since the last save went with the power: up to a step. */
    @Test
    void everyRestartWidensTheBandByASaveStep() {
        declared();
        GaugeFixture fixture = start();
        assertEquals(
                DECLARED_RESIDUAL + STEP,
                fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
    }

    @Test
    void aSlotThatDoesNotCheckWidensTheBandByTwo() {
        declared();
        store.cells[2][0] = 0x11;
        GaugeFixture fixture = start();
        assertEquals(
                DECLARED_RESIDUAL + 2 * STEP,
                fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        assertEquals(0, fixture.read().faultBits, "a cut save is no fault");
    }

    /** PWR01: 48 h with 5 A running may take 240 Ah; 5 % of 100 Ah an hour allows the same. */
    @Test
    void anExactOffTimeWidensTheBandByTheMostThatMayHaveFlowed() {
        declared();
        GaugeFixture fixture = start(settings().build(), 3_600_000, OffTime.EXACT);
        assertEquals(5 * AMP_HOUR, fixture.register(Register.BAND_GAP_NANOCOULOMBS));
        assertFalse(fixture.read().bandUnknown);
        // 700,000 less (110,000 residual root-sum with 5 % capacity bound) x 1.155, less 50,000
        assertTrue(fixture.read().lowerEdgePartsPerMillion < 700_000 - 50_000 - 105_000);
        GaugeFixture long48 = start(settings().build(), 48 * 3_600_000L, OffTime.EXACT);
        assertEquals(240 * AMP_HOUR, long48.register(Register.BAND_GAP_NANOCOULOMBS));
        assertTrue(long48.read().bandUnknown);
    }

    /** Without power nobody charged it full and told the gauge (rule D7). */
    @Test
    void anExactOffTimeIsTimeSinceFull() {
        declared();
        long before = start().register(Register.MINUTES_SINCE_FULL);
        GaugeFixture fixture = start(settings().build(), 48 * 3_600_000L, OffTime.EXACT);
        assertEquals(before + 48 * 60, fixture.register(Register.MINUTES_SINCE_FULL));
        GaugeFixture unknown = start(settings().build(), 48 * 3_600_000L, OffTime.AT_LEAST);
        assertEquals(before, unknown.register(Register.MINUTES_SINCE_FULL));
    }

    /** 60 days are more than 2^31 ms; half a percent a day makes 30 % of them. */
    @Test
    void anOffTimeBeyondThirtyTwoBitsCountsWhole() {
        GaugeSettings settings = settings().set(Setting.OFF_CURRENT_BOUND, 208).build();
        GaugeFixture before = start(settings, 0, OffTime.EXACT);
        before.declare(700_000);
        before.ticks(11, 0, 1_000);
        GaugeFixture fixture = start(settings, 60 * 86_400_000L, OffTime.EXACT);
        assertEquals(60 * 86_400_000L * 20_800, fixture.register(Register.BAND_GAP_NANOCOULOMBS));
    }

    @Test
    void anOffTimeThatIsNotExactLeavesTheBandWithoutALimit() {
        declared();
        for (OffTime offTime : new OffTime[] {OffTime.AT_LEAST, OffTime.UNKNOWN}) {
            GaugeFixture fixture = start(settings().build(), 1_000, offTime);
            assertEquals(700_000, fixture.read().stateOfChargePartsPerMillion, offTime.name());
            assertTrue(fixture.read().bandUnknown, offTime.name());
            assertEquals(0, fixture.read().lowerEdgePartsPerMillion);
            assertEquals(1_000_000, fixture.read().upperEdgePartsPerMillion);
            assertEquals(TrustReason.BAND_UNKNOWN, fixture.read().trustReason);
        }
    }

    @Test
    void anOffTimeBelowZeroIsTakenAsZero() {
        declared();
        GaugeFixture fixture = start(settings().build(), -5, OffTime.EXACT);
        assertEquals(0, fixture.register(Register.BAND_GAP_NANOCOULOMBS));
        assertEquals(0, fixture.lastValue(Event.POWERED_UP));
    }

    @Test
    void aRecordOfOtherSettingsKeepsThePercentageWidensAndSaysSo() {
        declared();
        GaugeSettings larger = settings().set(Setting.CAPACITY, 200_000).build();
        GaugeFixture fixture = start(larger, 0, OffTime.EXACT);
        assertEquals(700_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(140 * AMP_HOUR, fixture.charge());
        assertEquals(70 * AMP_HOUR, fixture.lastValue(Event.SETTINGS_CHANGED));
        assertEquals(
                DECLARED_RESIDUAL + STEP + 50_000,
                fixture.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        assertEquals(0, fixture.register(Register.MEASURED_CAPACITY_MILLIAMP_HOURS));
    }

    @Test
    void aRecordOfAnotherChemistryOrSystemVoltageIsUnknown() {
        declared();
        for (GaugeSettings other :
                new GaugeSettings[] {
                    settings().set(Setting.CHEMISTRY, 4).build(),
                    settings().set(Setting.NOMINAL_VOLTAGE, 24_000).build()
                }) {
            GaugeFixture fixture = start(other, 0, OffTime.EXACT);
            assertEquals(Readout.NOT_KNOWN, fixture.read().stateOfChargePartsPerMillion);
            assertEquals(Trust.UNKNOWN, fixture.read().trust);
            assertTrue(fixture.read().bandUnknown);
            assertEquals(1, fixture.times(Event.NEW_BATTERY));
            assertEquals(0, fixture.times(Event.RESTORED));
        }
    }

    @Test
    void damagedSlotsWithoutARecordAreALostAdjustment() {
        declared();
        for (byte[] slot : store.cells) {
            Arrays.fill(slot, (byte) 0x5A);
        }
        GaugeFixture fixture = start();
        assertEquals(Fault.ADJUSTMENT_LOST.bit(), fixture.read().faultBits);
        assertEquals(1, fixture.times(Event.FAULT_RAISED));
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
        fixture.declare(500_000);
        assertEquals(TrustReason.SENSOR_SUSPECT, fixture.read().trustReason);
        fixture.minutes(1, 0);
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        assertEquals(0, fixture.read().faultBits, "adjusted anew");
    }

    /** PWR13: 12.8 V at rest before, 13.3 V at rest after, and nothing flowed. */
    @Test
    void anotherRestedVoltageIsAnotherBattery() {
        declared();
        GaugeFixture fixture = start();
        assertEquals(0, fixture.times(Event.BATTERY_DOUBTFUL));
        Gauge swapped = fixture.gauge;
        swapped.powerUp(0, OffTime.EXACT);
        fixture.heard.clear();
        fixture.volts(12_400).tick(0, 1_000);
        assertEquals(1, fixture.times(Event.BATTERY_DOUBTFUL));
        assertEquals(12_400_000, fixture.lastValue(Event.BATTERY_DOUBTFUL));
        assertTrue(fixture.read().bandUnknown);
        fixture.volts(12_800).tick(0, 1_000);
        assertEquals(1, fixture.times(Event.BATTERY_DOUBTFUL), "asked once");
    }

    @Test
    void aVoltageUnderLoadOrOfAGarbageFrameSaysNothingOfTheBattery() {
        declared();
        GaugeFixture fixture = start();
        fixture.gauge.powerUp(0, OffTime.EXACT);
        fixture.heard.clear();
        fixture.volts(70_000).tick(0, 1_000);
        assertEquals(0, fixture.times(Event.BATTERY_DOUBTFUL));
        fixture.volts(12_400).tick(0, 1_000);
        assertEquals(1, fixture.times(Event.BATTERY_DOUBTFUL), "the first plausible one decides");
        fixture.gauge.powerUp(0, OffTime.EXACT);
        fixture.heard.clear();
        fixture.volts(12_400).tick(-20 * AMP, 1_000);
        assertEquals(0, fixture.times(Event.BATTERY_DOUBTFUL));
    }

    @Test
    void aMemoryThatFailsIsAFaultAndCountingGoesOn() {
        GaugeFixture fixture = declared();
        Arrays.fill(store.defects, StrictStore.Defect.PROGRAM_FAILS);
        fixture.minutes(60, -AMP);
        assertEquals(Fault.MEMORY_FAILING.bit(), fixture.read().faultBits);
        assertEquals(1, fixture.gauge.faults().count(Fault.MEMORY_FAILING));
        assertEquals(690_000, fixture.read().stateOfChargePartsPerMillion, 100);
        Arrays.fill(store.defects, StrictStore.Defect.NONE);
        fixture.minutes(60, -AMP);
        assertEquals(0, fixture.read().faultBits);
    }

    /** M6: the record may be of any age. */
    @Test
    void aRestoredRecordIsDoubtedWhenTheFirstSaveAfterItFails() {
        declared();
        GaugeFixture fixture = start();
        assertFalse(fixture.read().bandUnknown);
        Arrays.fill(store.defects, StrictStore.Defect.PROGRAM_FAILS);
        fixture.minutes(60, -AMP);
        assertTrue(fixture.read().bandUnknown);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 700_000);
        fixture.minutes(60, -AMP);
        assertFalse(fixture.read().bandUnknown, "asked once");
    }

    /**
     * M6: what stands on a declaration or on a record just written does not stand on the old one.
     */
    @Test
    void aFailingSaveSaysNothingOfWhatWasDeclaredOrSavedSince() {
        declared();
        GaugeFixture fixture = start();
        Arrays.fill(store.defects, StrictStore.Defect.PROGRAM_FAILS);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 700_000);
        fixture.minutes(60, -AMP);
        assertFalse(fixture.read().bandUnknown, "declared before the first save");

        Arrays.fill(store.defects, StrictStore.Defect.NONE);
        fixture = start();
        fixture.minutes(60, -AMP);
        Arrays.fill(store.defects, StrictStore.Defect.PROGRAM_FAILS);
        fixture.minutes(60, -AMP);
        assertFalse(fixture.read().bandUnknown, "the last good save is at most a step old");
    }

    /** Nothing of another chemistry's record was taken over, so nothing of it can be doubted. */
    @Test
    void aRecordOfAnotherBatteryIsNoneToDoubt() {
        declared();
        GaugeSettings lithium = settings().set(Setting.CHEMISTRY, 4).build();
        GaugeFixture fixture = new GaugeFixture(lithium, store, 0, OffTime.EXACT);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 700_000);
        Arrays.fill(store.defects, StrictStore.Defect.PROGRAM_FAILS);
        fixture.minutes(60, -AMP);
        assertFalse(fixture.read().bandUnknown);
    }

    /** The same object, power up again: as a new object on the same memory. */
    @Test
    void aSecondPowerUpStartsFromTheMemoryAlone() {
        GaugeFixture again = declared();
        again.volts(14_400).minutes(3, AMP).volts(12_500).minutes(70, -3 * AMP);
        again.tick(8_388_607, 1_000);
        GaugeFixture fresh = start();
        again.gauge.powerUp(0, OffTime.EXACT);
        again.sample.clockMillis = 0;
        again.volts(12_800).tick(0, 0);
        again.gauge.inspect(again.registers);
        for (Register register : Register.values()) {
            assertEquals(fresh.register(register), again.registers.get(register), register.name());
        }
        assertEquals(fresh.read().trust, again.read().trust);
        for (Fault fault : Fault.values()) {
            assertEquals(0, again.gauge.faults().count(fault), fault.name());
        }
    }

    @Test
    void aSecondPowerUpWithoutAMemoryKnowsNothing() {
        GaugeFixture fixture = new GaugeFixture(settings().build());
        fixture.declare(700_000);
        fixture.minutes(3, -AMP);
        fixture.gauge.powerUp(0, OffTime.EXACT);
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
        assertEquals(0, fixture.charge());
        assertEquals(0, fixture.register(Register.OUT_NANOCOULOMBS));
    }

    /** The list of docs/saved-state.md: what starts again and what does not. */
    @Test
    void filtersAndHoldsRestartAndTheRulesStandingDoesNot() {
        GaugeFixture before = start();
        before.volts(14_400).minutes(2, AMP);
        assertEquals(RuleState.NOT_ARMED, before.read().ruleState);
        before.volts(12_500).minutes(60, -AMP);
        GaugeFixture fixture = start();
        assertEquals(RuleState.NOT_ARMED, fixture.read().ruleState);
        assertEquals(RuleReason.QUIET_TIME, fixture.read().ruleReason);
        assertEquals(1, fixture.register(Register.FULL_COUNT));
        long discharged = fixture.register(Register.RULE_DISCHARGED_NANOCOULOMBS);
        assertTrue(Math.abs(discharged - AMP_HOUR) <= AMP_HOUR / 2, "discharged " + discharged);
        assertEquals(EstimateState.NO_ESTIMATE, fixture.read().timeToEmptyState);
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(0, fixture.register(Register.RULE_HELD_MINUTES));
        assertEquals(0, fixture.register(Register.UPTIME_MILLIS));
    }

    @Test
    void theLowChargeAlarmIsJudgedAnewAtOnce() {
        GaugeFixture before = declared();
        before.declare(100_000);
        before.ticks(11, 0, 1_000);
        assertTrue(before.read().lowCharge);
        assertTrue(start().read().lowCharge);
    }
}
