package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The commands, through a whole gauge: zero, span, new battery, forget. */
class GaugeCommandsTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;

    private final GaugeFixture fixture =
            new GaugeFixture(
                    GaugeFixture.roundNumbers()
                            .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                            .build());

    private CommandOutcome ask(Command command, long argument) {
        return fixture.gauge.command(command, argument);
    }

    private long digest() {
        fixture.gauge.inspect(fixture.registers);
        return fixture.registers.fold(Registers.DIGEST_START);
    }

    @Test
    void aZeroAdjustmentTakesTheLastMinutesMeanAway() {
        fixture.declare(500_000);
        fixture.minutes(1, 400);
        assertEquals(50_000, fixture.read().currentMicroamps);
        assertEquals(CommandOutcome.DONE, ask(Command.ZERO_ADJUSTMENT, 0));
        // 1/256 of a count is half a microamp; the adjustment is cut off to it.
        assertEquals(400 * 256, (int) fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8), 1);
        assertEquals(400 * 256, (int) fixture.lastValue(Event.ADJUSTED), 1);
        long before = fixture.charge();
        fixture.minutes(60, 400);
        assertEquals(before, fixture.charge(), "nothing is counted any more");
        // A second one starts from where the first left it.
        fixture.minutes(1, 240);
        assertEquals(CommandOutcome.DONE, ask(Command.ZERO_ADJUSTMENT, 0));
        assertEquals(240 * 256, (int) fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8), 2);
    }

    /** 3 A taken for zero would be 72 Ah a day. */
    @Test
    void aZeroAdjustmentIsRefusedWhereTheCurrentIsNotProvablyZero() {
        fixture.minutes(1, 3 * AMP);
        long before = digest();
        assertEquals(CommandOutcome.REFUSED_NOT_ZERO, ask(Command.ZERO_ADJUSTMENT, 0));
        assertEquals(before, digest());
        // Mean zero, but a ripple of +-3 A: not still.
        for (int i = 0; i < 60; i++) {
            fixture.tick(i % 2 == 0 ? 3 * AMP : -3 * AMP, 1_000);
        }
        before = digest();
        assertEquals(CommandOutcome.REFUSED_UNSTABLE, ask(Command.ZERO_ADJUSTMENT, 0));
        assertEquals(before, digest());
    }

    /** The minute that was measured with the old zero does not run on into the new one. */
    @Test
    void anAdjustmentEndsTheMinuteAndBeginsTheQuietTime() {
        // The quiet time of the power-up is over by then.
        fixture.declare(500_000);
        fixture.minutes(20, 400).tick(-600 * AMP, 30_000);
        ask(Command.ZERO_ADJUSTMENT, 0);
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(45, fixture.read().shownPercent, "what is shown follows a command");
        fixture.volts(14_400).minutes(1, AMP);
        assertEquals(RuleReason.QUIET_TIME, fixture.read().ruleReason);
    }

    @Test
    void aSpanAdjustmentNeedsTwoCurrents() {
        fixture.minutes(1, 0);
        assertEquals(CommandOutcome.FIRST_POINT_TAKEN, ask(Command.SPAN_ADJUSTMENT, 0));
        // 200 A shown where the reference says 202 A: one percent.
        fixture.minutes(1, 200 * AMP);
        assertEquals(CommandOutcome.DONE, ask(Command.SPAN_ADJUSTMENT, 202_000_000));
        assertEquals(10_000, fixture.register(Register.SPAN_ADJUSTMENT_PARTS_PER_MILLION));
        fixture.tick(200 * AMP, 1_000);
        assertEquals(202_000_000, fixture.read().currentMicroamps, 2);
    }

    @Test
    void aSpanAdjustmentIsRefusedWithItsReason() {
        fixture.minutes(1, 0);
        ask(Command.SPAN_ADJUSTMENT, 0);
        fixture.minutes(1, 50 * AMP);
        assertEquals(
                CommandOutcome.REFUSED_POINTS_TOO_CLOSE, ask(Command.SPAN_ADJUSTMENT, 51_000_000));
        ask(Command.SPAN_ADJUSTMENT, 50_000_000);
        fixture.minutes(1, 250 * AMP);
        assertEquals(CommandOutcome.REFUSED_TOO_LARGE, ask(Command.SPAN_ADJUSTMENT, 300_000_000));
        assertEquals(
                CommandOutcome.REFUSED_OUT_OF_RANGE, ask(Command.SPAN_ADJUSTMENT, Long.MAX_VALUE));
        assertEquals(0, fixture.register(Register.SPAN_ADJUSTMENT_PARTS_PER_MILLION));
        assertEquals(0, fixture.times(Event.ADJUSTED));
    }

    /** Another battery of the same kind: what was counted and measured belongs to the old one. */
    @Test
    void aNewBatteryForgetsTheOldOneAndKeepsTheMeter() {
        fixture.minutes(1, 400);
        ask(Command.ZERO_ADJUSTMENT, 0);
        fixture.declare(500_000);
        fixture.minutes(30, -10 * AMP);
        assertEquals(CommandOutcome.DONE, ask(Command.NEW_BATTERY, 0));
        assertEquals(Trust.UNKNOWN, fixture.read().trust);
        for (Register zero :
                new Register[] {
                    Register.CHARGE_NANOCOULOMBS,
                    Register.IN_NANOCOULOMBS,
                    Register.OUT_NANOCOULOMBS,
                    Register.IN_MICROJOULES,
                    Register.OUT_MICROJOULES,
                    Register.FULL_COUNT,
                    Register.MINUTES_SINCE_FULL,
                    Register.MEASURED_CAPACITY_MILLIAMP_HOURS
                }) {
            assertEquals(0, fixture.register(zero), zero.name());
        }
        assertEquals(400 * 256, (int) fixture.register(Register.ZERO_ADJUSTMENT_COUNTS_Q8), 1);
        // The sums go on from zero: the band counts only what the new battery saw.
        fixture.declare(500_000);
        fixture.minutes(1, -10 * AMP + 400);
        assertEquals(600_000_000_000L, fixture.register(Register.BAND_GROSS_NANOCOULOMBS));
    }

    @Test
    void forgettingWhatWasMeasuredChangesNeitherCountNorTrust() {
        fixture.declare(500_000);
        long before = digest();
        assertEquals(CommandOutcome.DONE, ask(Command.FORGET_MEASURED, 0));
        assertEquals(before, digest());
    }
}
