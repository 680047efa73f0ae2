package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

class TimeToFullProperties {
    private static final int LONGEST = 5_940;

    @Property(tries = 300)
    void neverNegativeNeverAboveTheLongest(
            @ForAll @LongRange(min = 1_000_000, max = 1L << 56) long capacity,
            @ForAll @LongRange(min = 0, max = 1L << 56) long charge,
            @ForAll int efficiency,
            @ForAll int taper,
            @ForAll @IntRange(min = 1, max = 1_000_000) int end,
            @ForAll @Size(max = 60) List<Integer> currents,
            @ForAll boolean fullVoltage) {
        TimeToFull time = new TimeToFull(capacity, efficiency, taper, end, LONGEST);
        for (int current : currents) {
            time.addMinute(true, charge, current, fullVoltage);
            assertTrue(time.minutes() >= 0 && time.minutes() <= LONGEST);
            assertTrue(time.taperMinutes() >= 0 && time.taperMinutes() <= 5_760);
        }
    }

    @Property(tries = 300)
    void moreChargeNeverTakesLonger(
            @ForAll @LongRange(min = 0, max = 100_000) long charge,
            @ForAll @LongRange(min = 0, max = 100_000) long other,
            @ForAll @IntRange(min = 1_000_000, max = 200_000_000) int current,
            @ForAll @IntRange(min = 0, max = 300) int taper) {
        int atLess = minutes(Math.min(charge, other), current, taper);
        assertTrue(minutes(Math.max(charge, other), current, taper) <= atLess);
        assertEquals(atLess, minutes(Math.min(charge, other), current, taper));
    }

    /** Charge in thousandths of an ampere-hour, of 100 Ah. */
    private static int minutes(long milliampHours, int current, int taper) {
        TimeToFull time = new TimeToFull(360_000_000_000_000L, 920_000, taper, 20_000, LONGEST);
        for (int i = 0; i < 20; i++) {
            time.addMinute(true, milliampHours * 3_600_000_000L, current, false);
        }
        return time.minutes();
    }
}
