package org.gaugebench.sim.plant;

/**
 * Open-circuit voltage of a whole battery against its charge at one temperature. Keeps the segment
 * of the last look-up, so that the usual look-up is two comparisons and one multiplication.
 */
final class OpenCircuitCurve {
    /** Voltages at a temperature, one for each point of the curve. */
    @FunctionalInterface
    interface Points {
        double[] voltsAt(double temperatureCelsius);
    }

    private final Points points;
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
        this(
                scaled(table.statesOfCharge(), capacity),
                celsius -> scaled(table.cellVoltsAt(celsius), cells),
                temperatureCelsius);
    }

    /**
     * Creates a curve through any points.
     *
     * @param charges rising
     * @param points voltages that belong to them
     * @param temperatureCelsius first temperature
     */
    OpenCircuitCurve(double[] charges, Points points, double temperatureCelsius) {
        this.points = points;
        this.charges = charges;
        volts = new double[charges.length];
        slopes = new double[charges.length - 1];
        setTemperature(temperatureCelsius);
    }

    private static double[] scaled(double[] values, double factor) {
        for (int i = 0; i < values.length; i++) {
            values[i] *= factor;
        }
        return values;
    }

    /** Takes over temperature and cached segment of a curve through the same points. */
    void adopt(OpenCircuitCurve other) {
        System.arraycopy(other.volts, 0, volts, 0, volts.length);
        System.arraycopy(other.slopes, 0, slopes, 0, slopes.length);
        lowCharge = other.lowCharge;
        highCharge = other.highCharge;
        lowVolts = other.lowVolts;
        slope = other.slope;
    }

    /** Moves the whole curve to a temperature. */
    void setTemperature(double temperatureCelsius) {
        System.arraycopy(points.voltsAt(temperatureCelsius), 0, volts, 0, volts.length);
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

    /** Voltage when empty. */
    double emptyVolts() {
        return volts[0];
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
