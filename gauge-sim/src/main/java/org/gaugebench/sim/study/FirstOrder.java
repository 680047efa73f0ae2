package org.gaugebench.sim.study;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The law of propagation of uncertainty of JCGM 100, 5.1 and 5.2: each input's standard uncertainty
 * times the model's slope at the best estimates. Right where the model is as good as straight over
 * what the inputs may do; {@link Validation} says where it is not.
 *
 * @param estimate the model at the best estimates
 * @param slopes sensitivity coefficient of each input
 * @param parts slope times standard uncertainty of each input, with its sign
 * @param standardUncertainty of the output
 * @param degreesOfFreedom effective, of Welch and Satterthwaite (JCGM 100, G.4)
 */
@SuppressWarnings("ArrayRecordComponent") // small, and nobody changes them or compares them
public record FirstOrder(
        double estimate,
        double[] slopes,
        double[] parts,
        double standardUncertainty,
        double degreesOfFreedom) {
    /** Small enough for a smooth formula, large enough for the digits of a double. */
    private static final double SMALL_STEP = 0.01;

    /**
     * Propagates inputs that are independent.
     *
     * @param model smooth near the best estimates
     * @param inputs at least one
     */
    public static FirstOrder of(Model model, List<Input> inputs) {
        return of(model, inputs, null);
    }

    /**
     * Propagates inputs, some of which go together.
     *
     * @param model smooth near the best estimates
     * @param inputs at least one
     * @param correlations coefficient of each pair, the diagonal 1; null for none
     */
    public static FirstOrder of(
            Model model, List<Input> inputs, double @Nullable [][] correlations) {
        int count = inputs.size();
        double[] slopes = new double[count];
        double[] parts = new double[count];
        double[] estimates = inputs.stream().mapToDouble(it -> it.distribution().mean()).toArray();
        for (int i = 0; i < count; i++) {
            double spread = inputs.get(i).distribution().standardUncertainty();
            double wide = slope(model, estimates, i, spread * SMALL_STEP);
            double narrow = slope(model, estimates, i, spread * SMALL_STEP / 2);
            // What is wrong with both falls with the square of the step (Richardson).
            slopes[i] = (4 * narrow - wide) / 3;
            parts[i] = slopes[i] * spread;
        }
        return of(model.valueAt(estimates.clone()), slopes, parts, inputs, correlations);
    }

    private static FirstOrder of(
            double estimate,
            double[] slopes,
            double[] parts,
            List<Input> inputs,
            double @Nullable [][] correlations) {
        double variance = 0;
        double denominator = 0;
        for (int i = 0; i < parts.length; i++) {
            for (int j = 0; j < parts.length; j++) {
                double together = i == j ? 1 : correlations == null ? 0 : correlations[i][j];
                variance += parts[i] * parts[j] * together;
            }
            double square = parts[i] * parts[i];
            denominator += square * square / inputs.get(i).degreesOfFreedom();
        }
        double degrees = denominator > 0 ? variance * variance / denominator : 1 / 0.0;
        return new FirstOrder(
                estimate, slopes, parts, StrictMath.sqrt(StrictMath.max(0, variance)), degrees);
    }

    private static double slope(Model model, double[] at, int index, double step) {
        double[] moved = at.clone();
        moved[index] = at[index] + step;
        double above = model.valueAt(moved);
        double up = moved[index];
        moved = at.clone();
        moved[index] = at[index] - step;
        double down = moved[index];
        return (above - model.valueAt(moved)) / (up - down);
    }

    /**
     * Estimate plus and minus the expanded uncertainty.
     *
     * @param probability of the interval
     * @param degreesOfFreedom for the coverage factor: {@link #degreesOfFreedom()} or infinity
     */
    public CoverageInterval interval(double probability, double degreesOfFreedom) {
        double half = StudentT.coverageFactor(probability, degreesOfFreedom) * standardUncertainty;
        return new CoverageInterval(estimate - half, estimate + half);
    }
}
