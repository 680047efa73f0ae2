package org.gaugebench.sim.study;

/**
 * Mean and standard deviation of some values, summed in their order.
 *
 * @param count how many
 * @param mean of them
 * @param standardUncertainty their standard deviation, over count less one (JCGM 101, 7.6)
 */
public record Sample(int count, double mean, double standardUncertainty) {
    /** Of the values from one index to before another. */
    static Sample of(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        double mean = sum / (to - from);
        double squares = 0;
        for (int i = from; i < to; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
        }
        double variance = to - from < 2 ? 0 : squares / (to - from - 1);
        return new Sample(to - from, mean, StrictMath.sqrt(variance));
    }
}
