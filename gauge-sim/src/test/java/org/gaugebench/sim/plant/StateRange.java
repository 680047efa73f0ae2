package org.gaugebench.sim.plant;

/**
 * A stretch of the state of charge in which a voltage is fitted or judged.
 *
 * @param fromPercent lower end
 * @param toPercent upper end
 */
record StateRange(int fromPercent, int toPercent) {
    /** Points from end to end, 0 to 1. */
    double[] points(int stepPercent) {
        double[] points = new double[(toPercent - fromPercent) / stepPercent + 1];
        for (int i = 0; i < points.length; i++) {
            points[i] = (fromPercent + i * stepPercent) / 100.0;
        }
        return points;
    }

    /** What each row of a record weighs; the sum is 1. */
    double[] weights(MeasuredRecord record, double[] states) {
        double[] weights = new double[states.length];
        double sum = 0;
        for (int row = 0; row < weights.length; row++) {
            boolean inside = states[row] * 100 >= fromPercent && states[row] * 100 <= toPercent;
            weights[row] = inside ? record.seconds(row) : 0;
            sum += weights[row];
        }
        if (sum == 0) {
            throw new AssertionError(record.label() + " never is at " + this);
        }
        for (int row = 0; row < weights.length; row++) {
            weights[row] /= sum;
        }
        return weights;
    }

    /** Root of the mean square of what a model is wrong by, over time, in volts of a cell. */
    double rmsVolts(CellVoltageModel model, MeasuredRecord record) {
        double[] weights = weights(record, model.states(record));
        double[] volts = model.answer(record);
        double sum = 0;
        for (int row = 0; row < volts.length; row++) {
            double off = volts[row] - record.volts(row);
            sum += weights[row] * off * off;
        }
        return StrictMath.sqrt(sum);
    }

    @Override
    public String toString() {
        return fromPercent + " to " + toPercent + " %";
    }
}
