package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.Chemistry;

/**
 * Part of the capacity that can be drawn at a temperature, in parts of what can be at 25 °C.
 *
 * <p>Lead-acid: one over the cell-size correction factors of IEEE Std 485, table 1, with straight
 * lines between the published rows. 25 to 35 °F and 125 °F are from memory. Lithium: defaults of
 * NREL's open techno-economic model (60, 80, 100, 100 % at -10, 0, 25, 40 °C). The outermost row
 * holds beyond the ends.
 */
public final class UsableCapacity {
    private static final double[] FAHRENHEIT = {
        25, 30, 35, 40, 45, 50, 55, 60, 65, 68, 70, 72, 75, 77, 80, 85, 90, 95, 100, 105, 110, 115,
        120, 125
    };
    private static final double[] SIZE_FACTORS = {
        1.520, 1.430, 1.350, 1.300, 1.250, 1.190, 1.150, 1.110, 1.080, 1.056, 1.040, 1.029, 1.011,
        1.000, 0.980, 0.960, 0.940, 0.930, 0.910, 0.890, 0.880, 0.870, 0.860, 0.850
    };
    private static final double[] LITHIUM_CELSIUS = {-10, 0, 25, 40};
    private static final double[] LITHIUM_PARTS = {0.60, 0.80, 1.00, 1.00};

    private UsableCapacity() {}

    /**
     * Part that can be drawn; above 1 for warm lead-acid.
     *
     * @param chemistry of the battery
     * @param celsius its temperature
     */
    public static double partAt(Chemistry chemistry, double celsius) {
        if (chemistry.isLeadAcid()) {
            return 1 / between(FAHRENHEIT, SIZE_FACTORS, celsius * 1.8 + 32);
        }
        return between(LITHIUM_CELSIUS, LITHIUM_PARTS, celsius);
    }

    private static double between(double[] at, double[] values, double where) {
        int last = at.length - 1;
        if (where <= at[0]) {
            return values[0];
        }
        if (where >= at[last]) {
            return values[last];
        }
        int upper = 1;
        while (where > at[upper]) {
            upper++;
        }
        double part = (where - at[upper - 1]) / (at[upper] - at[upper - 1]);
        return values[upper - 1] + part * (values[upper] - values[upper - 1]);
    }
}
