package org.gaugebench.core.charge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Energy against closed forms, at the ends of its range, and its saturation (rule G19). */
class EnergyCounterTest {
    private static final long MICROJOULES_PER_WATT_HOUR = 3_600_000_000L;

    private final EnergyCounter energy = new EnergyCounter();

    /** 1 Wh = 3600 J; 12.8 V x 100 Ah = 1280 Wh. */
    @Test
    void hundredAmpHoursAtTwelvePointEightVoltsAreTwelveHundredAndEightyWattHours() {
        for (int minute = 0; minute < 20 * 60; minute++) {
            energy.add(12_800, -5_000_000, 60_000);
        }
        assertEquals(1_280 * MICROJOULES_PER_WATT_HOUR, energy.outMicrojoules());
        assertEquals(0, energy.inMicrojoules());
    }

    @Test
    void inAndOutAreCountedApart() {
        energy.add(12_000, 2_000_000, 1_000);
        energy.add(13_000, -3_000_000, 1_000);
        assertEquals(24_000_000, energy.inMicrojoules());
        assertEquals(39_000_000, energy.outMicrojoules());
    }

    /** One picojoule a tick: a million ticks make one microjoule, none is lost. */
    @Test
    void theSmallestStepsAddUp() {
        for (int i = 0; i < 999_999; i++) {
            energy.add(1, 1, 1);
        }
        assertEquals(0, energy.inMicrojoules());
        energy.add(1, 1, 1);
        assertEquals(1, energy.inMicrojoules());
    }

    /** Just under the fold: the small sum holds the largest step on top of it. */
    @Test
    void theLargestStepFitsOnTopOfTheFoldLimit() {
        energy.add(50_000, 1_000_000_000, 10_000);
        assertEquals(500_000_000_000L, energy.inMicrojoules());
        energy.add(100_000, Integer.MAX_VALUE, 60_000);
        // 100 V x 2147.483647 A x 60 s = 12,884,901.882 J
        assertEquals(500_000_000_000L + 12_884_901_882_000L, energy.inMicrojoules());
        energy.add(100_000, -Integer.MAX_VALUE, 60_000);
        assertEquals(12_884_901_882_000L, energy.outMicrojoules());
    }

    @Test
    void theTotalsSaturate() {
        // 2^63 uJ / 1.2885e13 uJ = 715,828 minutes at the largest power.
        for (int minute = 0; minute < 720_000; minute++) {
            energy.add(100_000, Integer.MAX_VALUE, 60_000);
            energy.add(100_000, -Integer.MAX_VALUE, 60_000);
        }
        assertEquals(Long.MAX_VALUE, energy.inMicrojoules());
        assertEquals(Long.MAX_VALUE, energy.outMicrojoules());
    }
}
