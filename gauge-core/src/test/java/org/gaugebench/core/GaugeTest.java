package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The wiring: one whole gauge, from counts to readout, by its numbered rules. */
class GaugeTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;

    private final GaugeFixture fixture =
            new GaugeFixture(
                    GaugeFixture.roundNumbers()
                            .set(Setting.HOLD, 2)
                            .set(Setting.QUIET_TIME, 0)
                            .set(Setting.PEUKERT_EXPONENT, 1_000_000)
                            .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                            .build());

    @Test
    void theStateOfChargeIsUnknownUntilItIsDeclared() {
        fixture.minutes(3, -AMP);
        Readout readout = fixture.read();
        assertEquals(Readout.NOT_KNOWN, readout.stateOfChargePartsPerMillion);
        assertEquals(0, readout.remainingNanocoulombs);
        assertEquals(Trust.UNKNOWN, readout.trust);
        assertEquals(EstimateState.NO_ESTIMATE, readout.timeToEmptyState);
        fixture.declare(600_000);
        fixture.read();
        assertEquals(600_000, readout.stateOfChargePartsPerMillion);
        assertEquals(60 * AMP_HOUR, readout.remainingNanocoulombs);
        assertEquals(Trust.DECLARED, readout.trust);
        assertEquals(EstimateState.ESTIMATE, readout.timeToEmptyState);
        assertEquals(60 * 60, readout.timeToEmptyMinutes);
    }

    @Test
    void theStateOfChargeIsUnknownUntilFullIsProven() {
        fixture.volts(14_400).minutes(1, AMP);
        assertEquals(RuleState.HOLDING, fixture.read().ruleState);
        assertEquals(Readout.NOT_KNOWN, fixture.read().stateOfChargePartsPerMillion);
        fixture.minutes(1, AMP);
        assertEquals(1_000_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(Trust.PROVEN, fixture.read().trust);
        assertEquals(RuleReason.PROVEN_BY_TAPER, fixture.read().ruleReason);
        assertEquals(1, fixture.times(Event.SET_TO_FULL));
        assertEquals(1, fixture.register(Register.FULL_COUNT));
    }

    /** The event's figure is the step of the count, the last minute not counted twice. */
    @Test
    void settingToFullTellsTheStepOfTheCount() {
        fixture.declare(900_000);
        fixture.volts(14_400).minutes(2, AMP);
        assertEquals(10 * AMP_HOUR - 2 * AMP_HOUR / 60, fixture.lastValue(Event.SET_TO_FULL));
        assertEquals(100 * AMP_HOUR, fixture.charge());
        assertEquals(0, fixture.register(Register.MINUTE_NANOCOULOMBS));
    }

    /** Nobody was shown a count, so nothing stepped; the same for the other anchors. */
    @Test
    void aCountThatNobodyWasShownHasNoStep() {
        fixture.minutes(30, AMP);
        fixture.volts(14_400).minutes(2, AMP);
        assertEquals(0, fixture.lastValue(Event.SET_TO_FULL));
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.NEW_BATTERY, 0));
        assertEquals(-100 * AMP_HOUR, fixture.lastValue(Event.NEW_BATTERY));
        fixture.gauge.command(Command.NEW_BATTERY, 0);
        assertEquals(0, fixture.lastValue(Event.NEW_BATTERY));
    }

    @Test
    void afterADischargeTheRuleIsArmedAndTheLimitIsNinetyNinePercentAgain() {
        fixture.volts(14_400).minutes(2, AMP);
        fixture.volts(12_500).minutes(120, -AMP);
        assertEquals(1, fixture.times(Event.FULL_RULE_ARMED));
        assertEquals(2 * AMP_HOUR, fixture.lastValue(Event.FULL_RULE_ARMED));
        assertEquals(980_000, fixture.read().stateOfChargePartsPerMillion);
        fixture.minutes(240, AMP);
        assertEquals(990_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(3 * AMP_HOUR, fixture.register(Register.SURPLUS_NANOCOULOMBS));
        assertEquals(1, fixture.times(Event.HELD_AT_LIMIT));
        assertEquals(Trust.PROVEN, fixture.read().trust);
    }

    @Test
    void aGarbageFrameIsRejectedWhole() {
        fixture.declare(500_000);
        fixture.tick(-AMP, 1_000);
        fixture.volts(-1).tick(-AMP * 5, 1_000);
        assertEquals(Fault.COUNTS_IMPLAUSIBLE.bit(), fixture.read().faultBits);
        assertEquals(-1_000_000, fixture.read().currentMicroamps);
        assertEquals(12_800_000, fixture.read().voltageMicrovolts);
        fixture.volts(12_800).tick(8_388_608, 1_000);
        assertEquals(-1_000_000, fixture.read().currentMicroamps);
        fixture.volts(65_536).tick(-AMP, 1_000);
        assertEquals(12_800_000, fixture.read().voltageMicrovolts);
        assertEquals(1, fixture.times(Event.FAULT_RAISED));
        assertEquals(3, fixture.gauge.faults().count(Fault.COUNTS_IMPLAUSIBLE));
        // The last plausible ampere stood for all four seconds.
        assertEquals(50 * AMP_HOUR - 4_000_000_000L, fixture.charge());
        fixture.volts(12_800).tick(-AMP, 1_000);
        assertEquals(0, fixture.read().faultBits);
    }

    @Test
    void aClippedReadingCountsClippedAndRaisesItsFault() {
        fixture.tick(8_388_607, 1_000);
        assertEquals(Fault.SHUNT_CLIPPED.bit(), fixture.read().faultBits);
        assertEquals(8_388_607 * 125, fixture.read().currentMicroamps);
        fixture.tick(-8_388_608, 1_000);
        assertEquals(Fault.SHUNT_CLIPPED.bit(), fixture.read().faultBits);
        assertEquals(-8_388_608 * 125, fixture.read().currentMicroamps);
        assertEquals(1, fixture.times(Event.FAULT_RAISED));
        fixture.volts(65_535).tick(0, 1_000);
        assertEquals(Fault.VOLTAGE_CLIPPED.bit(), fixture.read().faultBits);
        assertEquals(2, fixture.times(Event.FAULT_RAISED));
        assertEquals(3, fixture.register(Register.FAULT_TICKS));
    }

    @Test
    void aGapIsNotCountedAndWhatCameBeforeItIs() {
        fixture.declare(500_000);
        fixture.tick(AMP, 30_000);
        fixture.tick(AMP, 65_536);
        assertEquals(50 * AMP_HOUR + 30_000_000_000L, fixture.charge());
        assertEquals(Fault.SAMPLES_MISSING.bit(), fixture.read().faultBits);
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(95_536, fixture.register(Register.UPTIME_MILLIS));
        fixture.tick(AMP, 65_535);
        assertEquals(50 * AMP_HOUR + 95_535_000_000L, fixture.charge());
        assertEquals(0, fixture.read().faultBits);
    }

    @Test
    void aClockThatRunsBackIsAFaultAndNoTime() {
        fixture.declare(500_000);
        fixture.tick(AMP, 1_000).tick(AMP, -500);
        assertEquals(Fault.CLOCK_BACKWARDS.bit(), fixture.read().faultBits);
        assertEquals(1_000, fixture.register(Register.UPTIME_MILLIS));
        fixture.tick(AMP, 1_000);
        assertEquals(50 * AMP_HOUR + 2_000_000_000L, fixture.charge());
    }

    @Test
    void aGapEndsTheHold() {
        fixture.volts(14_400).minutes(1, AMP);
        fixture.tick(AMP, 100_000);
        assertEquals(RuleReason.SAMPLES_MISSING, fixture.read().ruleReason);
        fixture.minutes(1, AMP);
        assertEquals(0, fixture.times(Event.SET_TO_FULL));
        fixture.minutes(1, AMP);
        assertEquals(1, fixture.times(Event.SET_TO_FULL));
    }

    @Test
    void commandsAnswerWithOneWordAndARefusalChangesNothing() {
        fixture.declare(500_000);
        fixture.gauge.inspect(fixture.registers);
        long before = fixture.registers.fold(Registers.DIGEST_START);
        assertEquals(CommandOutcome.REFUSED_OUT_OF_RANGE, fixture.declare(1_000_001));
        assertEquals(CommandOutcome.REFUSED_OUT_OF_RANGE, fixture.declare(-1));
        assertEquals(
                CommandOutcome.REFUSED_NO_MINUTE,
                fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
        assertEquals(
                CommandOutcome.REFUSED_NO_MINUTE,
                fixture.gauge.command(Command.SPAN_ADJUSTMENT, 1_000_000));
        fixture.gauge.inspect(fixture.registers);
        assertEquals(before, fixture.registers.fold(Registers.DIGEST_START));
        assertEquals(1, fixture.times(Event.DECLARED));
        assertEquals(CommandOutcome.DONE, fixture.declare(0));
        assertEquals(CommandOutcome.DONE, fixture.declare(1_000_000));
        assertEquals(3, fixture.times(Event.DECLARED));
    }

    @Test
    void aDeclaredFullLiftsTheLimitAndWaitsForADischarge() {
        fixture.declare(1_000_000);
        fixture.volts(14_400).minutes(5, AMP);
        assertEquals(1_000_000, fixture.read().stateOfChargePartsPerMillion);
        assertEquals(RuleState.NOT_ARMED, fixture.read().ruleState);
        assertEquals(Trust.DECLARED, fixture.read().trust);
        assertEquals(0, fixture.times(Event.SET_TO_FULL));
    }

    @Test
    void aDeclarationInMidMinuteCountsWhatTheMinuteBroughtBeforeIt() {
        fixture.tick(AMP, 30_000);
        fixture.declare(500_000);
        assertEquals(50 * AMP_HOUR, fixture.charge());
        fixture.tick(AMP, 30_000);
        assertEquals(50 * AMP_HOUR + 30_000_000_000L, fixture.charge());
    }

    @Test
    void emptyIsAnnouncedOnceAndAgainAfterADeclaration() {
        fixture.minutes(2, -AMP);
        assertEquals(0, fixture.times(Event.HELD_AT_EMPTY), "nothing is known yet");
        fixture.declare(0);
        fixture.minutes(3, -AMP);
        assertEquals(1, fixture.times(Event.HELD_AT_EMPTY));
        assertEquals(AMP_HOUR / 60, fixture.lastValue(Event.HELD_AT_EMPTY));
        assertEquals(3 * AMP_HOUR / 60, fixture.register(Register.DEFICIT_NANOCOULOMBS));
        fixture.declare(0);
        fixture.minutes(1, -AMP);
        assertEquals(2, fixture.times(Event.HELD_AT_EMPTY));
        assertEquals(0, fixture.read().stateOfChargePartsPerMillion);
    }

    /** A pump that starts every few minutes on a full battery is not news each time. */
    @Test
    void aCountThatHoversAtItsLimitIsAnnouncedOnce() {
        fixture.declare(1_000_000);
        fixture.minutes(1, AMP);
        assertEquals(1, fixture.times(Event.HELD_AT_LIMIT));
        for (int i = 0; i < 20; i++) {
            fixture.minutes(10, -2 * AMP).minutes(20, 2 * AMP);
        }
        assertEquals(1, fixture.times(Event.HELD_AT_LIMIT));
        // 0.5 Ah of 100 Ah is half a percent: there the limit counts as not yet left.
        fixture.minutes(30, -AMP).minutes(31, AMP);
        assertEquals(1, fixture.times(Event.HELD_AT_LIMIT));
        fixture.minutes(31, -AMP).minutes(32, AMP);
        assertEquals(2, fixture.times(Event.HELD_AT_LIMIT));
    }

    @Test
    void aCountThatHoversAtZeroIsAnnouncedOnce() {
        fixture.declare(0);
        for (int i = 0; i < 20; i++) {
            fixture.minutes(10, -2 * AMP).minutes(10, 2 * AMP);
        }
        assertEquals(1, fixture.times(Event.HELD_AT_EMPTY));
        // Half a percent exactly counts as not yet left, as at the upper limit.
        fixture.minutes(60, -AMP).minutes(30, AMP).minutes(60, -AMP);
        assertEquals(1, fixture.times(Event.HELD_AT_EMPTY));
        fixture.minutes(31, AMP).minutes(60, -AMP);
        assertEquals(2, fixture.times(Event.HELD_AT_EMPTY));
    }

    @Test
    void theUpperLimitIsNotAnnouncedWhileNothingIsKnown() {
        fixture.minutes(1_000, 10 * AMP);
        assertEquals(0, fixture.times(Event.HELD_AT_LIMIT));
        assertEquals(Readout.NOT_KNOWN, fixture.read().stateOfChargePartsPerMillion);
    }

    @Test
    void readoutAndRegistersTellTheSame() {
        fixture.sample.temperatureMillicelsius = 18_500;
        fixture.declare(700_000);
        fixture.minutes(7, -3 * AMP).tick(2 * AMP, 12_345);
        Readout readout = fixture.read();
        assertEquals(
                fixture.register(Register.STATE_OF_CHARGE_PARTS_PER_MILLION),
                readout.stateOfChargePartsPerMillion);
        assertEquals(fixture.charge(), readout.remainingNanocoulombs);
        assertEquals(fixture.register(Register.CURRENT_MICROAMPS), readout.currentMicroamps);
        assertEquals(2_000_000, readout.currentMicroamps);
        assertEquals(
                fixture.register(Register.FILTERED_MICROAMPS_Q8) / 256,
                readout.averageCurrentMicroamps);
        assertEquals(-3_000_000, readout.averageCurrentMicroamps);
        assertEquals(12_800_000, readout.voltageMicrovolts);
        assertEquals(18_500, readout.temperatureMillicelsius);
        assertEquals(fixture.register(Register.TIME_TO_EMPTY_MINUTES), readout.timeToEmptyMinutes);
        assertEquals(
                fixture.register(Register.TIME_TO_EMPTY_STATE), readout.timeToEmptyState.ordinal());
        assertEquals(fixture.register(Register.TRUST), readout.trust.ordinal());
    }

    /** Every register that moves in an ordinary life is filled: none was forgotten. */
    @Test
    void inspectFillsEveryRegister() {
        for (Register register : Register.values()) {
            fixture.registers.set(register, Long.MIN_VALUE + 7);
        }
        fixture.gauge.inspect(fixture.registers);
        for (Register register : Register.values()) {
            assertNotEquals(Long.MIN_VALUE + 7, fixture.registers.get(register), register.name());
        }
    }

    @Test
    void theReasonsAndStepsOfALongTickAreThoseOfItsMinutes() {
        fixture.declare(500_000);
        fixture.tick(AMP, 59_999);
        assertEquals(59_999, fixture.register(Register.MINUTE_MILLIS));
        fixture.tick(-AMP, 65_535);
        // 59,999 ms of +1 A and 1 ms of -1 A end the first minute; 60,000 ms the second
        assertEquals(50 * AMP_HOUR + 59_999_000_000L - 65_535_000_000L, fixture.charge());
        assertEquals(5_534, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(-1_000_000, fixture.register(Register.MINUTE_MEAN_MICROAMPS));
        assertEquals(12_800_000, fixture.register(Register.MINUTE_LOWEST_MICROVOLTS));
    }

    /** G19: 12.8 V and 5 A for an hour are 64 Wh out, 14.4 V and 10 A for half an hour 72 in. */
    @Test
    void energyIsCountedWithTheVoltageOfItsMoment() {
        fixture.minutes(60, -5 * AMP).volts(14_400).minutes(30, 10 * AMP);
        long wattHour = 3_600_000_000L;
        assertEquals(64 * wattHour, fixture.register(Register.OUT_MICROJOULES));
        assertEquals(72 * wattHour, fixture.register(Register.IN_MICROJOULES));
    }

    /** G24: a voltage at its rail lies above any threshold and proves nothing. */
    @Test
    void aMinuteThatRestsOnARailProvesNothing() {
        fixture.volts(65_535).minutes(60, AMP);
        assertEquals(0, fixture.times(Event.SET_TO_FULL));
        assertEquals(RuleReason.READING_DOUBTFUL, fixture.read().ruleReason);
    }
}
