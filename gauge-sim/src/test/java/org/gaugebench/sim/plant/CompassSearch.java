package org.gaugebench.sim.plant;

import java.util.function.ToDoubleFunction;

/**
 * The plainest search for the least of a function that is not linear: try each parameter a step up
 * and a step down, keep what is better, lengthen steps that helped and shorten those that did not.
 * It may end in a valley that is not the deepest; from one start it always ends in the same.
 */
final class CompassSearch {
    private static final int ROUNDS = 60;

    /** Steps begin long again, which leaves shallow valleys. */
    private static final int RESTARTS = 3;

    private static final double LONGER = 1.3;
    private static final double SHORTER = 0.6;

    private CompassSearch() {}

    /**
     * A parameter.
     *
     * @param start first value
     * @param step first step
     * @param low never below
     * @param high never above
     */
    record Parameter(double start, double step, double low, double high) {
        /** One that is not searched for. */
        static Parameter fixed(double value) {
            return new Parameter(value, 0, value, value);
        }
    }

    static double[] least(Parameter[] parameters, ToDoubleFunction<double[]> function) {
        double[] best = new double[parameters.length];
        for (int i = 0; i < best.length; i++) {
            best[i] = parameters[i].start();
        }
        double least = function.applyAsDouble(best);
        for (int restart = 0; restart < RESTARTS; restart++) {
            double[] steps = new double[best.length];
            for (int i = 0; i < best.length; i++) {
                steps[i] = parameters[i].step();
            }
            for (int round = 0; round < ROUNDS; round++) {
                for (int i = 0; i < best.length; i++) {
                    double before = least;
                    for (int sign = 1; sign >= -1 && steps[i] > 0 && least == before; sign -= 2) {
                        double[] tried = best.clone();
                        double moved = best[i] + sign * steps[i];
                        tried[i] =
                                Math.min(
                                        Math.max(moved, parameters[i].low()), parameters[i].high());
                        double value = function.applyAsDouble(tried);
                        if (value < least) {
                            least = value;
                            best = tried;
                        }
                    }
                    steps[i] *= least < before ? LONGER : SHORTER;
                }
            }
        }
        return best;
    }
}
