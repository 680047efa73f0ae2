package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.DAY_MILLIS;
import static org.gaugebench.core.band.BandRig.FULL_NANOCOULOMBS;
import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.gaugebench.core.band.BandRig.ampHours;
import static org.gaugebench.core.band.BandRig.exact;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The percentage is kept under another capacity, and so is what it was unsure of (rule S2). */
class LargerCapacityTest {
    /** An offset, half a step and a leak since the anchor, in parts of twice the capacity. */
    @Test
    void standingCurrentsStayAsUncertainInALargerCapacity() {
        long[][] currents = {{1, 0, 0}, {12_500, 25_000, 0}, {12_500, 10, 0}, {1, 0, 10_000}};
        for (long[] current : currents) {
            GaugeSettings.Builder settings =
                    exact().set(Setting.OFFSET_BOUND, current[0])
                            .set(Setting.UNMEASURED_BOUND, current[2]);
            ErrorBand small = new ErrorBand(settings.build(), current[1]);
            small.anchor(0);
            small.add(10 * DAY_MILLIS, 0, 0, WARMTH);
            small.update(FULL_NANOCOULOMBS);
            ErrorBand large =
                    new ErrorBand(settings.set(Setting.CAPACITY, 200_000).build(), current[1]);
            large.resume(0, 10 * DAY_MILLIS, 0, 0, 0, 0, 10 * DAY_MILLIS * WARMTH);
            large.capacityChanged(100_000, 200_000);
            large.update(2 * FULL_NANOCOULOMBS);
            assertTrue(large.lowSidePartsPerMillion() >= small.lowSidePartsPerMillion());
            assertTrue(large.highSidePartsPerMillion() >= small.highSidePartsPerMillion());
        }
    }

    /** A record without a capacity says nothing of the ratio. */
    @Test
    void aCapacityOfNothingChangesNothing() {
        ErrorBand band = new ErrorBand(exact().build(), 0);
        band.anchor(0);
        band.add(DAY_MILLIS, ampHours(3), ampHours(2), WARMTH);
        band.capacityChanged(0, 100_000);
        assertEquals(ampHours(5), band.grossNanocoulombs());
        assertEquals(0, band.gapNanocoulombs());
    }
}
