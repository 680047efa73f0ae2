package org.gaugebench.sim.device.exhibits;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The settings' rested voltages, read by gauges that do not ask whether the battery rested. */
final class VoltageTable {
    private static final double[] PARTS = {0, 0.1, 0.25, 0.5, 0.75, 0.9, 1};

    private final double[] microvolts;

    VoltageTable(GaugeSettings settings) {
        microvolts =
                new double[] {
                    settings.get(Setting.REST_VOLTAGE_0) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_10) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_25) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_50) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_75) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_90) * 1e3,
                    settings.get(Setting.REST_VOLTAGE_100) * 1e3
                };
    }

    /** The part of the capacity at a voltage, 0 to 1, linear between the points. */
    double partAt(int atMicrovolts) {
        if (atMicrovolts <= microvolts[0]) {
            return 0;
        }
        for (int i = 1; i < PARTS.length; i++) {
            if (atMicrovolts < microvolts[i]) {
                double within =
                        (atMicrovolts - microvolts[i - 1]) / (microvolts[i] - microvolts[i - 1]);
                return PARTS[i - 1] + within * (PARTS[i] - PARTS[i - 1]);
            }
        }
        return 1;
    }
}
