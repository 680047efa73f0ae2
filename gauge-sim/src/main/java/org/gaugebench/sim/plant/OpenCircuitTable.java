package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.Chemistry;

/**
 * Open-circuit voltage of one cell against state of charge and temperature, as published, with
 * straight lines between the points and the outermost temperature beyond the ends.
 *
 * <p>Monotone: between rising points straight lines rise, in any mixture of two rows too.
 */
final class OpenCircuitTable {
    /** Cells of a 12 V lead-acid block, by which its published block voltages are divided. */
    private static final double LEAD_CELLS = 6;

    private final double[] statesOfCharge;
    private final double[] celsius;
    private final double[][] cellVolts;

    private OpenCircuitTable(double[] statesOfCharge, double[] celsius, double[][] cellVolts) {
        this.statesOfCharge = statesOfCharge;
        this.celsius = celsius;
        this.cellVolts = cellVolts;
    }

    /** The table of a chemistry. */
    static OpenCircuitTable of(Chemistry chemistry) {
        return switch (chemistry) {
            case LEAD_ACID_FLOODED -> leadAcidFlooded();
            case LEAD_ACID_AGM, LEAD_ACID_GEL -> leadAcidGelAndMat();
            case LIFEPO4 -> lithiumIronPhosphate();
            case NMC -> nickelManganeseCobalt();
        };
    }

    /**
     * A table of one temperature, such as a measured one; copies its arguments.
     *
     * @param statesOfCharge 0 to 1, rising
     * @param cellVolts one for each of them
     */
    static OpenCircuitTable through(double[] statesOfCharge, double[] cellVolts) {
        return new OpenCircuitTable(
                statesOfCharge.clone(), new double[] {25}, new double[][] {cellVolts.clone()});
    }

    /**
     * Source: the trade's table for gel and mat batteries against temperature, as kept in the
     * lead_acid_12v data set of the Electrical Age 2 project; its 26.7 °C row is the well-known
     * one.
     */
    private static OpenCircuitTable leadAcidGelAndMat() {
        return leadAcid(
                new double[][] {
                    {11.666, 11.866, 12.266, 12.466, 12.666},
                    {11.738, 11.938, 12.338, 12.538, 12.738},
                    {11.756, 11.956, 12.356, 12.556, 12.756},
                    {11.772, 11.972, 12.372, 12.572, 12.772},
                    {11.793, 11.993, 12.393, 12.593, 12.793},
                    {11.800, 12.000, 12.400, 12.600, 12.800},
                    {11.808, 12.008, 12.408, 12.608, 12.808},
                    {11.813, 12.013, 12.413, 12.613, 12.813},
                });
    }

    private static OpenCircuitTable leadAcid(double[][] blockVolts) {
        for (double[] row : blockVolts) {
            for (int i = 0; i < row.length; i++) {
                row[i] /= LEAD_CELLS;
            }
        }
        return new OpenCircuitTable(
                new double[] {0, 0.25, 0.50, 0.75, 1},
                new double[] {-17.8, -1.1, 4.4, 10.0, 21.1, 26.7, 37.8, 48.9},
                blockVolts);
    }

    /**
     * Source: Sunil, Pattipati, Balasingam, "Piecewise Linear Approximation of Battery Open-Circuit
     * Voltage Characteristics Using Dynamic Programming", IEEE Trans. Instrum. Meas. (2025), LFP
     * cell at C/32, mean of charge and discharge, room temperature.
     */
    private static OpenCircuitTable lithiumIronPhosphate() {
        return new OpenCircuitTable(
                new double[] {0, 0.0033, 0.0117, 0.0267, 0.0534, 0.0885, 0.2972, 0.9833, 0.9950, 1},
                new double[] {25},
                new double[][] {
                    {2.0102, 2.4177, 2.7405, 2.9299, 3.0872, 3.1942, 3.2772, 3.3511, 3.4180, 3.5981}
                });
    }

    /**
     * Source: the trade's table for flooded batteries against temperature, kept in the same data
     * set as the one for gel and mat batteries; its 26.7 °C row is the well-known industry table.
     */
    private static OpenCircuitTable leadAcidFlooded() {
        return leadAcid(
                new double[][] {
                    {11.756, 11.926, 12.106, 12.316, 12.516},
                    {11.828, 11.998, 12.178, 12.388, 12.588},
                    {11.846, 12.016, 12.196, 12.406, 12.606},
                    {11.862, 12.032, 12.212, 12.422, 12.622},
                    {11.883, 12.053, 12.233, 12.443, 12.643},
                    {11.890, 12.060, 12.240, 12.450, 12.650},
                    {11.898, 12.068, 12.248, 12.458, 12.658},
                    {11.903, 12.073, 12.253, 12.463, 12.663},
                });
    }

    /**
     * Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), NMC cell A at C/20,
     * mean of charge and discharge, room temperature.
     */
    private static OpenCircuitTable nickelManganeseCobalt() {
        return new OpenCircuitTable(
                new double[] {0, 0.0050, 0.0352, 0.0854, 0.1357, 0.2915, 0.4523, 0.8392, 0.9548, 1},
                new double[] {25},
                new double[][] {
                    {2.5000, 2.8080, 3.1179, 3.3182, 3.4193, 3.5826, 3.6941, 4.0664, 4.1121, 4.2000}
                });
    }

    /** Voltage of one cell in a row of {@link #cellVoltsAt}; the end points hold beyond them. */
    double inRow(double[] row, double stateOfCharge) {
        int last = row.length - 1;
        if (stateOfCharge <= statesOfCharge[0]) {
            return row[0];
        }
        if (stateOfCharge >= statesOfCharge[last]) {
            return row[last];
        }
        int upper = 1;
        while (stateOfCharge > statesOfCharge[upper]) {
            upper++;
        }
        double part =
                (stateOfCharge - statesOfCharge[upper - 1])
                        / (statesOfCharge[upper] - statesOfCharge[upper - 1]);
        return row[upper - 1] + part * (row[upper] - row[upper - 1]);
    }

    /** The states of charge of the table's points, 0 to 1, rising. */
    double[] statesOfCharge() {
        return statesOfCharge.clone();
    }

    /** The row of cell voltages at a temperature, one for each of {@link #statesOfCharge()}. */
    double[] cellVoltsAt(double temperatureCelsius) {
        int last = celsius.length - 1;
        if (temperatureCelsius <= celsius[0]) {
            return cellVolts[0].clone();
        }
        if (temperatureCelsius >= celsius[last]) {
            return cellVolts[last].clone();
        }
        int upper = 1;
        while (temperatureCelsius > celsius[upper]) {
            upper++;
        }
        double part =
                (temperatureCelsius - celsius[upper - 1]) / (celsius[upper] - celsius[upper - 1]);
        double[] row = new double[statesOfCharge.length];
        for (int i = 0; i < row.length; i++) {
            double low = cellVolts[upper - 1][i];
            row[i] = low + part * (cellVolts[upper][i] - low);
        }
        return row;
    }
}
