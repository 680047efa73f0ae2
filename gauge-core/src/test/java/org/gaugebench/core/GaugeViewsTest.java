package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** What a display and a bus get from a whole gauge (V rules). */
class GaugeViewsTest {
    private static final int MINUTE = 60_000;

    /** The fixture's shunt of 1,048 A asks for units of 100 mA and 100 mAh. */
    private static final int UNIT = 100;

    /** 1,000 Ah. */
    private final GaugeFixture fixture = fixture(1_000_000);

    private static GaugeFixture fixture(int milliampHours) {
        return new GaugeFixture(
                GaugeFixture.roundNumbers()
                        .set(Setting.CAPACITY, milliampHours)
                        .set(Setting.PEUKERT_EXPONENT, 1_000_000)
                        .set(Setting.SHOWN_AS_ZERO_BELOW, 200)
                        .build());
    }

    private int word(int code) {
        return fixture.gauge.readBus(code);
    }

    private void minutes(int milliamps, int number) {
        for (int i = 0; i < number; i++) {
            fixture.tick(milliamps * 8, MINUTE);
        }
    }

    @Test
    void anUnknownChargeShowsNothingAndIsNotInitialized() {
        minutes(-1_000, 2);
        assertEquals(Readout.NOT_KNOWN, fixture.read().shownPercent);
        assertEquals(-1, fixture.register(Register.SHOWN_PERCENT));
        assertEquals(0, fixture.readout.shownTimeToEmptyMinutes);
        assertEquals(0, word(SmartBatteryWord.REMAINING_CAPACITY_CODE));
        assertEquals(100, word(SmartBatteryWord.MAX_ERROR_CODE));
        assertEquals(65_535, word(SmartBatteryWord.AVERAGE_TIME_TO_EMPTY_CODE));
        int status = word(SmartBatteryWord.BATTERY_STATUS_CODE);
        assertEquals(0, status & SmartBatteryWord.INITIALIZED_MASK);
    }

    /** The specification's accuracy is one-sided: the lower edge, and the width as MaxError. */
    @Test
    void theBusReadsTheLowerEdgeAndTheWidth() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 625_000);
        Readout readout = fixture.read();
        int low = readout.lowerEdgePartsPerMillion;
        int high = readout.upperEdgePartsPerMillion;
        assertTrue(low > 450_000 && high < 800_000, low + " to " + high);
        assertEquals(low / 10_000, word(SmartBatteryWord.RELATIVE_STATE_OF_CHARGE_CODE));
        assertEquals((high + 9_999) / 10_000 - low / 10_000, word(SmartBatteryWord.MAX_ERROR_CODE));
        assertEquals(low / 100, word(SmartBatteryWord.REMAINING_CAPACITY_CODE));
        assertEquals(1_000_000 / UNIT, word(SmartBatteryWord.FULL_CHARGE_CAPACITY_CODE));
        assertEquals(1_000_000 / UNIT, word(SmartBatteryWord.DESIGN_CAPACITY_CODE));
        assertEquals(12_000, word(SmartBatteryWord.DESIGN_VOLTAGE_CODE));
        assertEquals(12_800, word(SmartBatteryWord.VOLTAGE_CODE));
    }

    @Test
    void currentsAndHoursOfTheBusFollowTheLoad() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 800_000);
        minutes(-1_000 * UNIT, 3);
        fixture.tick(-2_000 * UNIT * 8, 30_000);
        assertEquals(-2_000, (short) word(SmartBatteryWord.CURRENT_CODE));
        // half of the last sixty seconds at 1 A, half at 2 A
        assertEquals(-1_500, (short) word(SmartBatteryWord.AVERAGE_CURRENT_CODE));
        int remaining = word(SmartBatteryWord.REMAINING_CAPACITY_CODE);
        assertEquals(remaining * 60 / 2_000, word(SmartBatteryWord.RUN_TIME_TO_EMPTY_CODE));
        assertEquals(remaining * 60 / 1_500, word(SmartBatteryWord.AVERAGE_TIME_TO_EMPTY_CODE));
        assertEquals(65_535, word(SmartBatteryWord.AVERAGE_TIME_TO_FULL_CODE));
    }

    /** Three times 600 Ah out of 1,000 Ah are one whole cycle, not yet two. */
    @Test
    void cyclesAreTheChargeTakenOutOverTheCapacity() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 1_000_000);
        for (int i = 0; i < 3; i++) {
            minutes(-600_000, 60);
            minutes(600_000, 60);
        }
        assertEquals(1, word(SmartBatteryWord.CYCLE_COUNT_CODE));
    }

    @Test
    void fullAndEmptyAreSaidAndEmptyIsRememberedUnseen() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 1_000_000);
        int full = word(SmartBatteryWord.BATTERY_STATUS_CODE);
        assertEquals(
                SmartBatteryWord.FULLY_CHARGED_MASK, full & SmartBatteryWord.FULLY_CHARGED_MASK);
        // Nobody looks while the lower edge is at zero; of 22 % declared it is not yet 20.
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 0);
        minutes(-1_000, 1);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 220_000);
        int empty = word(SmartBatteryWord.BATTERY_STATUS_CODE);
        assertEquals(
                SmartBatteryWord.FULLY_DISCHARGED_MASK,
                empty & SmartBatteryWord.FULLY_DISCHARGED_MASK);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 600_000);
        int charged = word(SmartBatteryWord.BATTERY_STATUS_CODE);
        assertEquals(0, charged & SmartBatteryWord.FULLY_DISCHARGED_MASK);
    }

    /** 10,000 Ah do not fit into units of 100 mAh: units of 1,000, and the scale says so. */
    @Test
    void theScaleFollowsTheCapacity() {
        assertEquals(2, word(SmartBatteryWord.SPECIFICATION_INFO_CODE) >> 12);
        GaugeFixture large = fixture(10_000_000);
        assertEquals(3, large.gauge.readBus(SmartBatteryWord.SPECIFICATION_INFO_CODE) >> 12);
        assertEquals(10_000, large.gauge.readBus(SmartBatteryWord.FULL_CHARGE_CAPACITY_CODE));
    }

    @Test
    void theHostWritesItsThreeWordsAndNothingElse() {
        assertTrue(fixture.gauge.writeBus(SmartBatteryWord.AT_RATE_CODE, -3_000));
        assertEquals(-3_000, (short) word(SmartBatteryWord.AT_RATE_CODE));
        assertFalse(fixture.gauge.writeBus(SmartBatteryWord.REMAINING_CAPACITY_CODE, 1));
        fixture.gauge.changeSettings(fixture.settings.toBuilder().build());
        assertEquals(0, word(SmartBatteryWord.AT_RATE_CODE));
        fixture.gauge.writeBus(SmartBatteryWord.AT_RATE_CODE, -3_000);
        fixture.gauge.powerUp(0, OffTime.EXACT);
        assertEquals(0, word(SmartBatteryWord.AT_RATE_CODE));
    }

    @Test
    void aDisplayRoundsAndHidesSmallCurrents() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 625_999);
        minutes(-126_040, 2);
        Readout readout = fixture.read();
        assertEquals(62, readout.shownPercent);
        assertEquals(62, fixture.register(Register.SHOWN_PERCENT));
        assertEquals(-126_000, readout.shownMilliamps);
        assertEquals(-126_000, fixture.register(Register.SHOWN_MILLIAMPS));
        assertEquals(readout.timeToEmptyMinutes, readout.shownTimeToEmptyMinutes);
        assertTrue(readout.shownTimeToEmptyMinutes > 250);
        assertEquals(
                readout.shownTimeToEmptyMinutes,
                fixture.register(Register.SHOWN_TIME_TO_EMPTY_MINUTES));
        minutes(-199, 1);
        assertEquals(0, fixture.read().shownMilliamps);
        assertEquals(-199_000, fixture.readout.currentMicroamps);
    }

    /** A declaration is no proof: 100 % only while full is proven or declared, 99 below it. */
    @Test
    void oneHundredFallsWhenHalfAPercentIsOut() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 1_000_000);
        assertEquals(100, fixture.read().shownPercent);
        minutes(-1_000, 299);
        assertEquals(100, fixture.read().shownPercent);
        minutes(-1_000, 2);
        assertEquals(99, fixture.read().shownPercent);
    }

    @Test
    void lookingChangesNothing() {
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 625_000);
        GaugeFixture unseen = fixture(1_000_000);
        unseen.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 625_000);
        for (int i = 0; i < 200; i++) {
            fixture.tick((i % 7 - 4) * 8_000, 20_000);
            unseen.tick((i % 7 - 4) * 8_000, 20_000);
            fixture.read();
            word(SmartBatteryWord.BATTERY_STATUS_CODE);
        }
        for (Register register : Register.values()) {
            assertEquals(unseen.register(register), fixture.register(register), register.name());
        }
    }
}
