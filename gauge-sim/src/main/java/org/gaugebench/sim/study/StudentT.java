package org.gaugebench.sim.study;

/**
 * Coverage factors: quantiles of the t distribution and of the normal one.
 *
 * <p>The probability within plus and minus t is a finite sum for whole degrees of freedom
 * (Abramowitz and Stegun, 26.7.3 and 26.7.4), and the normal one a series (26.2.11); the quantile
 * is found by halving. Everything is {@link StrictMath}, so a factor is the same everywhere.
 */
public final class StudentT {
    /** Beyond so many degrees of freedom the normal factor stands in: 1e-3 away at most. */
    private static final int MOST_DEGREES = 10_000;

    private static final double LARGEST = 1_000;
    private static final int HALVINGS = 80;

    private StudentT() {}

    /**
     * The factor that goes with a coverage probability.
     *
     * @param probability of the interval of plus and minus the factor; above 0, below 1
     * @param degreesOfFreedom at least 1; cut to a whole number, as JCGM 100, G.4.2 does; infinity
     *     for the normal distribution
     */
    public static double coverageFactor(double probability, double degreesOfFreedom) {
        if (!(probability > 0 && probability < 1 && degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException(probability + " at " + degreesOfFreedom);
        }
        boolean normal = degreesOfFreedom >= MOST_DEGREES;
        int degrees = normal ? 0 : (int) degreesOfFreedom;
        double low = 0;
        double high = LARGEST;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            double within = normal ? withinNormal(middle) : within(middle, degrees);
            if (within < probability) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static double withinNormal(double x) {
        if (x > 9) {
            return 1;
        }
        double term = x;
        double sum = x;
        for (int i = 3; term > sum * 1e-17; i += 2) {
            term *= x * x / i;
            sum += term;
        }
        return 2 * sum * StrictMath.exp(-x * x / 2) / StrictMath.sqrt(2 * StrictMath.PI);
    }

    private static double within(double t, int degrees) {
        double root = StrictMath.sqrt(degrees);
        double angle = StrictMath.atan(t / root);
        double cosine = StrictMath.cos(angle);
        double sine = StrictMath.sin(angle);
        boolean odd = degrees % 2 == 1;
        double term = odd ? cosine : 1;
        double sum = degrees == 1 ? 0 : term;
        for (int i = odd ? 3 : 2; i <= degrees - 2; i += 2) {
            term *= cosine * cosine * (i - 1) / i;
            sum += term;
        }
        return odd ? 2 / StrictMath.PI * (angle + sine * sum) : sine * sum;
    }
}
