package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * The step of the converter is a width: an offset that is taken off every sample is no part of it.
 */
class OffsetAndBandTest {
    private static final int MINUTES = 600;

    /** B3: with the offset in the step, 256 counts of it made the band as wide as 128 steps. */
    @Test
    void theBandIsAsWideWithAnOffsetAsWithout() {
        long without = widthAfterTenHours(0);
        assertEquals(without, widthAfterTenHours(256));
        assertEquals(without, widthAfterTenHours(-65_536));
        assertEquals(without, widthAfterTenHours(65_536));
    }

    private static long widthAfterTenHours(int offsetCountsQ8) {
        GaugeSettings settings =
                GaugeFixture.roundNumbers().set(Setting.SHUNT_OFFSET, offsetCountsQ8).build();
        GaugeFixture gauge = new GaugeFixture(settings, StateStore.NONE, 0, OffTime.UNKNOWN);
        gauge.declare(500_000);
        gauge.minutes(MINUTES, offsetCountsQ8 / 256);
        return gauge.register(Register.UPPER_EDGE_PARTS_PER_MILLION)
                - gauge.register(Register.LOWER_EDGE_PARTS_PER_MILLION);
    }
}
