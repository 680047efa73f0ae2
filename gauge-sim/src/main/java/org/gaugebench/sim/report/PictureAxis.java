package org.gaugebench.sim.report;

import java.math.BigDecimal;

/** A level axis from nothing to a largest value, ruled at round values. */
final class PictureAxis {
    private static final int MOST_LINES = 8;
    private static final int[] STEPS = {1, 2, 5};

    private final int left;
    private final int width;
    private final BigDecimal step;
    private final int count;

    /**
     * Fits an axis.
     *
     * @param largest value to show, above 0
     * @param left where it begins
     * @param width of the frame
     */
    PictureAxis(double largest, int left, int width) {
        this.left = left;
        this.width = width;
        double most = Math.max(largest, 1e-9);
        BigDecimal tried = BigDecimal.ONE;
        int index = 0;
        int decade = (int) StrictMath.floor(StrictMath.log10(most)) - 1;
        do {
            tried = BigDecimal.valueOf(STEPS[index % 3]).scaleByPowerOfTen(decade + index / 3);
            index++;
        } while (most / tried.doubleValue() > MOST_LINES);
        step = tried;
        count = Math.max(1, (int) StrictMath.ceil(most / tried.doubleValue()));
    }

    /** Steps from one end to the other. */
    int count() {
        return count;
    }

    /** The value of a ruled line. */
    double value(int index) {
        return step.doubleValue() * index;
    }

    /** The same for people. */
    String label(int index) {
        BigDecimal value = step.multiply(BigDecimal.valueOf(index)).stripTrailingZeros();
        return value.signum() == 0 ? "0" : value.toPlainString();
    }

    /** Where a value stands. */
    int x(double value) {
        return left + (int) StrictMath.round(value / (step.doubleValue() * count) * width);
    }
}
