package org.gaugebench.core.readout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.estimate.LoadFilter;
import org.gaugebench.core.estimate.RateModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Source of codes, units, ranges, accuracies and bits: Smart Battery Data Specification 1.1 (1998).
 * The minutes follow from its units by hand: mAh x 60 / mA, rounded down. Rules V4, V5, V6, V7 and
 * V8.
 */
class SmartBatteryViewReferenceTest {
    private static final long MILLIAMP_HOUR = 3_600_000_000L;
    private static final int DISCHARGING = 0x0040;
    private static final int INITIALIZED = 0x0080;

    private final SmartBatteryInput input = new SmartBatteryInput();

    /** A pack of 65,535 mAh, unscaled, without rate dependence. */
    private final SmartBatteryView view =
            new SmartBatteryView(65_535, 12_000, 30_000, RateModel.none());

    private void charge(long lowMilliampHours, long highMilliampHours, long fullMilliampHours) {
        input.known = true;
        input.lowNanocoulombs = lowMilliampHours * MILLIAMP_HOUR;
        input.highNanocoulombs = highMilliampHours * MILLIAMP_HOUR;
        input.fullChargeNanocoulombs = fullMilliampHours * MILLIAMP_HOUR;
        view.update(input);
    }

    @ParameterizedTest
    @CsvSource({
        "10000, -1500, 400",
        "60000, -5000, 720",
        "33333, -1234, 1620",
        "65535, -1, 65534",
        "65535, 0, 65535",
        "65535, 1500, 65535",
        "0, -1500, 0",
    })
    void minutesToEmptyAtTheAskedAndAtThePresentRate(int charge, int milliamps, int minutes) {
        input.currentMicroamps = milliamps * 1_000;
        input.oneMinuteMicroamps = milliamps * 1_000;
        charge(charge, charge, 65_535);
        assertTrue(view.write(0x04, milliamps));
        assertEquals(minutes, view.read(0x06));
        assertEquals(minutes, view.read(0x11));
        assertEquals(minutes, view.read(0x12));
    }

    /** "If the state of charge reads 50 and MaxError 10, the truth is 50 to 60." */
    @Test
    void theAccuracyIsOneSided() {
        charge(57_000, 65_000, 100_000);
        SmartBatteryView scaled = new SmartBatteryView(100_000, 12_000, 100_000, RateModel.none());
        scaled.update(input);
        assertEquals(57, scaled.read(0x0D));
        assertEquals(8, scaled.read(0x0C));
        assertEquals(5_700, scaled.read(0x0F));
        charge(57_999, 65_001, 100_000);
        scaled.update(input);
        assertEquals(57, scaled.read(0x0D));
        assertEquals(66 - 57, scaled.read(0x0C));
        assertEquals(5_799, scaled.read(0x0F));
    }

    /** SpecificationInfo: 0x0021 is version 1.1; bits 12 to 15 are the power of ten of IPScale. */
    @ParameterizedTest
    @CsvSource({
        "65535, 32767, 0x0021, 65535",
        "65536, 32767, 0x1021, 6553",
        "50000, 32768, 0x1021, 5000",
        "100000, 100000, 0x1021, 10000",
        "655360, 100000, 0x2021, 6553",
        "10000000, 2000000, 0x3021, 10000",
    })
    void largerPacksSayTheirScale(
            long designMilliampHours, long ratedMilliamps, int info, int word) {
        SmartBatteryView scaled =
                new SmartBatteryView(designMilliampHours, 12_000, ratedMilliamps, RateModel.none());
        assertEquals(info, scaled.read(0x1A));
        assertEquals(word, scaled.read(0x18));
    }

    @Test
    void currentsChargesAndTheAskedRateAreScaledTogether() {
        SmartBatteryView scaled = new SmartBatteryView(100_000, 12_000, 100_000, RateModel.none());
        input.currentMicroamps = -5_000_000;
        input.oneMinuteMicroamps = -2_500_000;
        charge(60_000, 60_000, 100_000);
        scaled.update(input);
        assertEquals(-500, (short) scaled.read(0x0A));
        assertEquals(-250, (short) scaled.read(0x0B));
        assertEquals(10_000, scaled.read(0x10));
        assertEquals(12 * 60, scaled.read(0x11));
        assertEquals(24 * 60, scaled.read(0x12));
        scaled.write(0x04, -1_000);
        assertEquals(6 * 60, scaled.read(0x06));
    }

    @ParameterizedTest
    @CsvSource({
        "25000, 2982",
        "0, 2732",
        "-273150, 0",
        "-273100, 1",
        "26849, 3000",
        "6280150, 65533",
        "2147483646, 65535",
        "-2147483648, 0",
    })
    void temperatureIsInTenthsOfAKelvin(int millicelsius, int word) {
        input.temperatureMillicelsius = millicelsius;
        view.update(input);
        assertEquals(word, view.read(0x08));
    }

    @Test
    void voltageIsInMillivolts() {
        input.voltageMicrovolts = 12_345_999;
        view.update(input);
        assertEquals(12_345, view.read(0x09));
        input.voltageMicrovolts = -1;
        view.update(input);
        assertEquals(0, view.read(0x09));
        assertEquals(12_000, view.read(0x19));
    }

    @ParameterizedTest
    @CsvSource({"32767000, 32767", "32768000, 32767", "-32768000, -32768", "-40000000, -32768"})
    void currentsAreHeldToSixteenBits(int microamps, int milliamps) {
        input.currentMicroamps = microamps;
        view.update(input);
        assertEquals(milliamps, (short) view.read(0x0A));
    }

    /** A box of sixty seconds, not a pole: 3000 mA at 30 s where a pole of 60 s gives 2361 mA. */
    @Test
    void theAverageIsARollingMinute() {
        LoadFilter filter = new LoadFilter(65_535 * MILLIAMP_HOUR, 30);
        filter.addMinute(0);
        for (int half = 1; half <= 2; half++) {
            filter.addStretch(6_000_000, 30_000);
            input.oneMinuteMicroamps = filter.oneMinuteMicroamps();
            view.update(input);
            assertEquals(3_000 * half, view.read(0x0B));
        }
    }

    @Test
    void theCapacityAlarmStartsAtATenthOfTheDesignAndZeroDisablesIt() {
        assertEquals(6_553, view.read(0x01));
        charge(6_552, 6_552, 65_535);
        assertEquals(0x0200, view.read(0x16) & 0x0200);
        charge(6_553, 6_553, 65_535);
        assertEquals(0, view.read(0x16) & 0x0200);
        charge(1, 1, 65_535);
        assertTrue(view.write(0x01, 0));
        assertEquals(0, view.read(0x16) & 0x0200);
    }

    @Test
    void theTimeAlarmStartsAtTenMinutesAndZeroDisablesIt() {
        assertEquals(10, view.read(0x02));
        input.oneMinuteMicroamps = -6_000_000;
        charge(999, 999, 65_535);
        assertEquals(0x0100, view.read(0x16) & 0x0100);
        charge(1_000, 1_000, 65_535);
        assertEquals(0, view.read(0x16) & 0x0100);
        charge(1, 1, 65_535);
        view.write(0x02, 0);
        assertEquals(0, view.read(0x16) & 0x0100);
    }

    @Test
    void theDischargingBitIsSetWheneverNothingIsCharged() {
        view.write(0x01, 0);
        charge(30_000, 30_000, 65_535);
        assertEquals(INITIALIZED | DISCHARGING, view.read(0x16));
        input.currentMicroamps = -1_000;
        view.update(input);
        assertEquals(INITIALIZED | DISCHARGING, view.read(0x16));
        input.currentMicroamps = 1_000;
        view.update(input);
        assertEquals(INITIALIZED, view.read(0x16));
        input.fullProven = true;
        view.update(input);
        assertEquals(INITIALIZED | 0x0020, view.read(0x16));
    }

    @Test
    void fullyDischargedIsClearedAtTwentyPercent() {
        charge(0, 0, 50_000);
        assertEquals(0x0010, view.read(0x16) & 0x0010);
        charge(9_999, 9_999, 50_000);
        assertEquals(0x0010, view.read(0x16) & 0x0010);
        charge(10_000, 10_000, 50_000);
        assertEquals(0, view.read(0x16) & 0x0010);
    }

    @Test
    void nothingLeftAtThisRateTerminatesTheDischarge() {
        input.currentMicroamps = -30_000_000;
        charge(499, 499, 50_000);
        assertEquals(0x0800, view.read(0x16) & 0x0800);
        input.currentMicroamps = -1_000_000;
        view.update(input);
        assertEquals(0, view.read(0x16) & 0x0800);
    }

    @Test
    void theCycleCountSaturates() {
        input.cycleCount = 65_534;
        view.update(input);
        assertEquals(65_534, view.read(0x17));
        input.cycleCount = Long.MAX_VALUE;
        view.update(input);
        assertEquals(65_535, view.read(0x17));
    }

    @Test
    void absoluteStateOfChargeMayExceedOneHundred() {
        charge(65_535, 65_535, 65_535);
        SmartBatteryView small = new SmartBatteryView(50_000, 12_000, 30_000, RateModel.none());
        small.update(input);
        assertEquals(131, small.read(0x0E));
        assertEquals(100, small.read(0x0D));
    }

    @Test
    void theAskedRateMustLastTenSecondsOnTopOfThePresentLoad() {
        // 10 mAh are 36 C: 3600 mA for 10 s.
        charge(10, 10, 50_000);
        view.write(0x04, -3_600);
        assertEquals(1, view.read(0x07));
        input.currentMicroamps = -1_000;
        view.update(input);
        assertEquals(0, view.read(0x07));
        view.write(0x04, 1);
        assertEquals(1, view.read(0x07));
    }

    @Test
    void timesToFull() {
        charge(30_000, 30_000, 50_000);
        view.write(0x04, 5_000);
        assertEquals(240, view.read(0x05));
        view.write(0x04, -5_000);
        assertEquals(65_535, view.read(0x05));
        assertEquals(65_535, view.read(0x13));
        input.oneMinuteMicroamps = 5_000_000;
        input.timeToFullMinutes = 300;
        view.update(input);
        assertEquals(300, view.read(0x13));
        input.timeToFullMinutes = 70_000;
        view.update(input);
        assertEquals(65_534, view.read(0x13));
    }

    @Test
    void anUnknownChargeIsNothingWithAnErrorOfOneHundred() {
        charge(50_000, 50_000, 50_000);
        input.known = false;
        input.currentMicroamps = -1_000_000;
        view.update(input);
        assertEquals(0, view.read(0x0D));
        assertEquals(100, view.read(0x0C));
        assertEquals(0, view.read(0x0F));
        assertEquals(65_535, view.read(0x11));
        assertEquals(DISCHARGING, view.read(0x16));
    }

    @Test
    void errorCodesStayUntilTheNextCommand() {
        assertEquals(0, view.read(0x20));
        assertEquals(3, view.read(0x16) & 0xF);
        assertFalse(view.write(0x0D, 50));
        assertEquals(4, view.read(0x16) & 0xF);
        view.read(0x0D);
        assertEquals(0, view.read(0x16) & 0xF);
    }

    @Test
    void theModeIsMilliamps() {
        assertEquals(0, view.read(0x03));
        assertFalse(view.write(0x03, 0x8000));
    }

    /** AverageTimeToFull: 65,535 says "not being charged"; an estimate of 0 minutes is a time. */
    @Test
    void minutesToFullAreOfAChargeOnly() {
        input.timeToFullMinutes = 0;
        input.oneMinuteMicroamps = 1_000;
        charge(65_000, 65_535, 65_535);
        assertEquals(0, view.read(0x13));
        input.oneMinuteMicroamps = 0;
        charge(65_000, 65_535, 65_535);
        assertEquals(65_535, view.read(0x13));
    }

    /** AtRateOK is true for a rate that is no discharge, whatever is known. */
    @Test
    void aRateOfNothingCanAlwaysBeHad() {
        input.known = false;
        view.update(input);
        assertTrue(view.write(0x04, 0));
        assertEquals(1, view.read(0x07));
        assertTrue(view.write(0x04, -1));
        assertEquals(0, view.read(0x07));
    }

    /** A capacity that is no multiple of a hundredth of itself: 100 % is the most all the same. */
    @Test
    void theAccuracyDoesNotReachBeyondFull() {
        input.known = true;
        input.fullChargeNanocoulombs = 10_000 * MILLIAMP_HOUR + 99;
        input.highNanocoulombs = input.fullChargeNanocoulombs;
        input.lowNanocoulombs = 5_000 * MILLIAMP_HOUR;
        view.update(input);
        assertEquals(100, view.read(0x0D) + view.read(0x0C));
    }

    /** Under a milliamp is no discharge that could be ended (TERMINATE_DISCHARGE is 0x0800). */
    @Test
    void aCurrentThatReadsZeroIsNotTerminated() {
        input.currentMicroamps = -999;
        charge(0, 1_000, 65_535);
        assertEquals(0, view.read(0x16) & 0x0800);
        input.currentMicroamps = -1_000;
        charge(0, 1_000, 65_535);
        assertEquals(0x0800, view.read(0x16) & 0x0800);
    }
}
