package org.gaugebench.core.rules;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Open-circuit voltage to state of charge: linear between the settings' points. */
final class RestVoltageTable {
    private static final int[] POINTS_PARTS_PER_MILLION = {
        0, 100_000, 250_000, 500_000, 750_000, 900_000, 1_000_000
    };

    // Parameters.
    private final long[] pointMicrovolts;

    RestVoltageTable(GaugeSettings settings) {
        pointMicrovolts =
                new long[] {
                    settings.get(Setting.REST_VOLTAGE_0) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_10) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_25) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_50) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_75) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_90) * 1_000,
                    settings.get(Setting.REST_VOLTAGE_100) * 1_000
                };
    }

    /**
     * State of charge at a rested voltage.
     *
     * <p><b>Range:</b> 1e8 uV x 250,000 ppm below 2^45; rounded down; 0 and 1,000,000 outside the
     * table. The settings check that the points rise.
     */
    int partsPerMillion(long microvolts) {
        int last = pointMicrovolts.length - 1;
        if (microvolts <= pointMicrovolts[0]) {
            return 0;
        }
        for (int i = 1; i <= last; i++) {
            if (microvolts < pointMicrovolts[i]) {
                long low = pointMicrovolts[i - 1];
                long width = (long) POINTS_PARTS_PER_MILLION[i] - POINTS_PARTS_PER_MILLION[i - 1];
                return (int)
                        (POINTS_PARTS_PER_MILLION[i - 1]
                                + (microvolts - low) * width / (pointMicrovolts[i] - low));
            }
        }
        return POINTS_PARTS_PER_MILLION[last];
    }
}
