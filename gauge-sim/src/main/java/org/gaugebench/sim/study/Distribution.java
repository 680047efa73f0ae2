package org.gaugebench.sim.study;

import org.gaugebench.sim.random.GaussianNoise;
import org.gaugebench.sim.random.SplitMix64;

/**
 * What is known of a quantity: a probability density of JCGM 101, 6.4. Draws come from our own
 * generators and {@link StrictMath}, so that a seed gives the same draws on every machine.
 */
public sealed interface Distribution {
    /** Best estimate of the quantity. */
    double mean();

    /** Standard uncertainty: the density's standard deviation. */
    double standardUncertainty();

    /** Smallest value that can be drawn; minus infinity where there is none. */
    double lower();

    /** Largest value that can be drawn; infinity where there is none. */
    double upper();

    /**
     * Starts a sequence of draws.
     *
     * @param seed of the sequence, from {@link org.gaugebench.sim.random.SeedTree}
     */
    Draws draws(long seed);

    /** A sequence of draws. */
    interface Draws {
        /** The next value. */
        double next();
    }

    /**
     * Each value between two ends alike (JCGM 101, 6.4.2); half-width over the root of three.
     *
     * @param lower end
     * @param upper end, above the lower one
     */
    record Rectangular(double lower, double upper) implements Distribution {
        @Override
        public double mean() {
            return middle(lower, upper);
        }

        @Override
        public double standardUncertainty() {
            return (upper - lower) / StrictMath.sqrt(12);
        }

        @Override
        public Draws draws(long seed) {
            SplitMix64 source = new SplitMix64(seed);
            return () -> lower + (upper - lower) * source.nextDouble();
        }
    }

    /**
     * Normal (JCGM 101, 6.4.7).
     *
     * @param mean best estimate
     * @param standardUncertainty above zero
     */
    record Normal(double mean, double standardUncertainty) implements Distribution {
        @Override
        public double lower() {
            return Double.NEGATIVE_INFINITY;
        }

        @Override
        public double upper() {
            return Double.POSITIVE_INFINITY;
        }

        @Override
        public Draws draws(long seed) {
            GaussianNoise source = new GaussianNoise(seed);
            return () -> mean + standardUncertainty * source.next();
        }
    }

    /**
     * Sum of two equal rectangular ones (JCGM 101, 6.4.5); half-width over the root of six.
     *
     * @param lower end
     * @param upper end, above the lower one
     */
    record Triangular(double lower, double upper) implements Distribution {
        @Override
        public double mean() {
            return middle(lower, upper);
        }

        @Override
        public double standardUncertainty() {
            return (upper - lower) / StrictMath.sqrt(24);
        }

        @Override
        public Draws draws(long seed) {
            return new Trapezoidal(lower, upper, 0).draws(seed);
        }
    }

    /**
     * Of what swings like a sine between two ends (JCGM 101, 6.4.6); half-width over the root of
     * two.
     *
     * @param lower end
     * @param upper end, above the lower one
     */
    record Arcsine(double lower, double upper) implements Distribution {
        @Override
        public double mean() {
            return middle(lower, upper);
        }

        @Override
        public double standardUncertainty() {
            return (upper - lower) / StrictMath.sqrt(8);
        }

        @Override
        public Draws draws(long seed) {
            SplitMix64 source = new SplitMix64(seed);
            return () -> {
                double phase = 2 * StrictMath.PI * source.nextDouble();
                return mean() + (upper - lower) / 2 * StrictMath.sin(phase);
            };
        }
    }

    /**
     * Sum of two rectangular ones (JCGM 101, 6.4.4).
     *
     * @param lower end
     * @param upper end, above the lower one
     * @param top width of the flat top over that of the base, 0 to 1
     */
    record Trapezoidal(double lower, double upper, double top) implements Distribution {
        @Override
        public double mean() {
            return middle(lower, upper);
        }

        @Override
        public double standardUncertainty() {
            return (upper - lower) * StrictMath.sqrt((1 + top * top) / 24);
        }

        @Override
        public Draws draws(long seed) {
            SplitMix64 source = new SplitMix64(seed);
            return () -> {
                double first = (1 + top) * source.nextDouble();
                double second = (1 - top) * source.nextDouble();
                return lower + (upper - lower) / 2 * (first + second);
            };
        }
    }

    private static double middle(double lower, double upper) {
        return lower + (upper - lower) / 2;
    }
}
