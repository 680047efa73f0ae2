package org.gaugebench.sim.plant;

/**
 * Open-circuit voltage of a whole battery against its charge at one temperature. Keeps the segment
 * of the last look-up, so that the usual look-up is two comparisons and one multiplication.
 */
final class OpenCircuitCurve {
    private final OpenCircuitTable table;
    private final int cells;
    private final double[] charges;
    private final double[] volts;
    private final double[] slopes;

    // Cached segment.
    private double lowCharge;
    private double highCharge;
    private double lowVolts;
    private double slope;

    /**
     * Creates the curve.
     *
     * @param table of one cell
     * @param cells in series
     * @param capacity charge when full, in any unit; look-ups use the same unit
     * @param temperatureCelsius first temperature
     */
    OpenCircuitCurve(
            OpenCircuitTable table, int cells, double capacity, double temperatureCelsius) {
        this.table = table;
        this.cells = cells;
        charges = table.statesOfCharge();
        volts = new double[charges.length];
        slopes = new double[charges.length - 1];
        for (int i = 0; i < charges.length; i++) {
            charges[i] *= capacity;
        }
        charges[charges.length - 1] = capacity;
        setTemperature(temperatureCelsius);
    }

    /** Moves the whole curve to a temperature. */
    void setTemperature(double temperatureCelsius) {
        double[] row = table.cellVoltsAt(temperatureCelsius);
        for (int i = 0; i < row.length; i++) {
            volts[i] = row[i] * cells;
        }
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = (volts[i + 1] - volts[i]) / (charges[i + 1] - charges[i]);
        }
        useSegment(0);
    }

    /** Voltage at a charge between empty and full. */
    double voltsAt(double charge) {
        if (charge < lowCharge || charge > highCharge) {
            findSegment(charge);
        }
        return lowVolts + (charge - lowCharge) * slope;
    }

    /** Slope of the segment of the last look-up, volts per unit of charge. */
    double slope() {
        return slope;
    }

    /** Voltage when full. */
    double fullVolts() {
        return volts[volts.length - 1];
    }

    private void findSegment(double charge) {
        int index = 0;
        while (index < slopes.length - 1 && charge > charges[index + 1]) {
            index++;
        }
        useSegment(index);
    }

    private void useSegment(int index) {
        lowCharge = charges[index];
        highCharge = charges[index + 1];
        lowVolts = volts[index];
        slope = slopes[index];
    }
}
