package org.gaugebench.core.band;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** A 100 Ah battery with the bounds a test asks for, and figures in the units of people. */
final class BandRig {
    static final long NANOCOULOMBS_PER_AMP_HOUR = 3_600_000_000_000L;
    static final long HOUR_MILLIS = 3_600_000L;
    static final long DAY_MILLIS = 24 * HOUR_MILLIS;
    static final long FULL_NANOCOULOMBS = 100 * NANOCOULOMBS_PER_AMP_HOUR;
    static final int WARMTH = 256;

    /**
     * What a closed form in real numbers may be below the band: each of eight terms rounds up in at
     * most two steps, 2 ppm are added to the change of the count, 1 ppm for the resolution, and the
     * factor 1.155 stands for 1.1547 (0.03 % of the band, at most 300 ppm of the capacity).
     */
    static final double ROUNDING = 20;

    static final double COVERAGE = 2 / Math.sqrt(3);

    private BandRig() {}

    /** Every bound as small as it can be, and an efficiency of 1. */
    static GaugeSettings.Builder exact() {
        return GaugeSettings.builder()
                .set(Setting.CAPACITY, 100_000)
                .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                .set(Setting.OFFSET_BOUND, 1)
                .set(Setting.GAIN_BOUND, 0)
                .set(Setting.ASYMMETRY_BOUND, 0)
                .set(Setting.EFFICIENCY_BOUND, 0)
                .set(Setting.SELF_DISCHARGE_BOUND, 0)
                .set(Setting.CAPACITY_BOUND, 0)
                .set(Setting.UNMEASURED_BOUND, 0);
    }

    static long ampHours(long ampHours) {
        return ampHours * NANOCOULOMBS_PER_AMP_HOUR;
    }

    /** Days of cycling by 40 Ah out and in, 40 Ah below the anchor at full. */
    static void cycle(ErrorBand band, int days) {
        band.add(0, 0, ampHours(40), WARMTH);
        for (int day = 0; day < days; day++) {
            band.add(DAY_MILLIS / 2, 0, ampHours(40), WARMTH);
            band.add(DAY_MILLIS / 2, ampHours(40), 0, WARMTH);
        }
        band.update(ampHours(60));
    }
}
