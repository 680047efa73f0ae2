package org.gaugebench.core.readout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.gaugebench.core.estimate.RateModel;
import org.gaugebench.core.port.SmartBatteryWord;

class SmartBatteryViewProperties {
    private static SmartBatteryInput input(
            long capacity, long low, long width, int current, int average) {
        SmartBatteryInput input = new SmartBatteryInput();
        input.known = true;
        input.fullChargeNanocoulombs = capacity;
        input.lowNanocoulombs = Math.min(low, capacity);
        input.highNanocoulombs = Math.min(input.lowNanocoulombs + width, capacity);
        input.currentMicroamps = current;
        input.oneMinuteMicroamps = average;
        return input;
    }

    private static SmartBatteryView view(long capacity) {
        return new SmartBatteryView(capacity / 3_600_000_000L, 12_000, 100_000, RateModel.none());
    }

    @Property
    void everyWordHasSixteenBits(
            @ForAll @LongRange(min = 360_000_000_000L, max = 36_000_000_000_000_000L) long capacity,
            @ForAll @LongRange(min = 0, max = 1L << 55) long low,
            @ForAll @LongRange(min = 0, max = 1L << 55) long width,
            @ForAll int current,
            @ForAll int average,
            @ForAll int rate,
            @ForAll int anything) {
        SmartBatteryInput input = input(capacity, low, width, current, average);
        input.temperatureMillicelsius = anything;
        input.voltageMicrovolts = anything;
        input.cycleCount = anything;
        input.timeToFullMinutes = anything;
        SmartBatteryView view = view(capacity);
        view.update(input);
        view.write(SmartBatteryWord.AT_RATE_CODE, rate);
        for (int code = -1; code < 0x40; code++) {
            int word = view.read(code);
            assertTrue(word >= 0 && word <= 0xFFFF, code + " reads " + word);
        }
        boolean out = average < 0;
        assertEquals(
                !out, view.read(SmartBatteryWord.AVERAGE_TIME_TO_EMPTY_CODE) == 65_535, "average");
    }

    /** The truth, anywhere in the band, lies between the figure and the figure plus MaxError. */
    @Property
    void theBandLiesBetweenTheFigureAndItsError(
            @ForAll @LongRange(min = 360_000_000_000L, max = 36_000_000_000_000_000L) long capacity,
            @ForAll @LongRange(min = 0, max = 1L << 55) long low,
            @ForAll @LongRange(min = 0, max = 1L << 55) long width) {
        // A whole number of mAh, as settings give.
        long whole = capacity / 3_600_000_000L * 3_600_000_000L;
        SmartBatteryInput input = input(whole, low, width, -1, -1);
        SmartBatteryView view = view(whole);
        view.update(input);
        int percent = view.read(SmartBatteryWord.RELATIVE_STATE_OF_CHARGE_CODE);
        int error = view.read(SmartBatteryWord.MAX_ERROR_CODE);
        long hundredth = whole / 100;
        assertTrue(percent * hundredth <= input.lowNanocoulombs);
        assertTrue((percent + error) * hundredth >= input.highNanocoulombs);
        assertTrue(percent + error <= 100);
    }
}
