package org.gaugebench.sim.random;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Statistics of fixed seeds. Tolerances are 5 standard errors of the statistic at its sample size:
 * of an honest generator one seed in 1.7 million would fail a check.
 */
class GaussianNoiseTest {
    private static final int DRAWS = 4_000_000;

    /** P(|x| beyond 1, 2, 3, 4 standard deviations), tables of the normal distribution. */
    private static final double[] TAILS = {0.317310508, 0.045500264, 0.002699796, 0.0000633425};

    @Test
    void momentsAreThoseOfTheStandardNormal() {
        GaussianNoise noise = new GaussianNoise(2024);
        double[] sums = new double[5];
        for (int i = 0; i < DRAWS; i++) {
            double x = noise.next();
            double x2 = x * x;
            sums[1] += x;
            sums[2] += x2;
            sums[3] += x2 * x;
            sums[4] += x2 * x2;
        }
        double root = Math.sqrt(DRAWS);
        // Var(x) = 1, Var(x^2) = 2, Var(x^3) = 15, Var(x^4) = 105 - 9 = 96.
        assertEquals(0, sums[1] / DRAWS, 5 / root, "mean");
        assertEquals(1, sums[2] / DRAWS, 5 * Math.sqrt(2) / root, "variance");
        assertEquals(0, sums[3] / DRAWS, 5 * Math.sqrt(15) / root, "third moment");
        assertEquals(3, sums[4] / DRAWS, 5 * Math.sqrt(96) / root, "fourth moment");
    }

    @Test
    void bothTailsHoldAsManyDrawsAsTheyShould() {
        GaussianNoise noise = new GaussianNoise(77);
        int[] above = new int[4];
        int[] below = new int[4];
        for (int i = 0; i < DRAWS; i++) {
            double x = noise.next();
            for (int k = 0; k < 4; k++) {
                above[k] += x > k + 1 ? 1 : 0;
                below[k] += x < -(k + 1) ? 1 : 0;
            }
        }
        for (int k = 0; k < 4; k++) {
            double p = TAILS[k] / 2;
            double tolerance = 5 * Math.sqrt(DRAWS * p * (1 - p));
            assertEquals(DRAWS * p, above[k], tolerance, "above " + (k + 1));
            assertEquals(DRAWS * p, below[k], tolerance, "below " + (k + 1));
        }
    }

    /**
     * Kolmogorov-Smirnov: sqrt(n) D exceeds 1.95 with probability 0.001 (2 exp(-2 x 1.95^2)); the
     * seed is fixed, so the check does not flicker.
     */
    @Test
    void distributionPassesKolmogorovSmirnov() {
        int draws = 200_000;
        GaussianNoise noise = new GaussianNoise(5);
        double[] values = new double[draws];
        for (int i = 0; i < draws; i++) {
            values[i] = noise.next();
        }
        Arrays.sort(values);
        double largest = 0;
        for (int i = 0; i < draws; i++) {
            double p = normalDistribution(values[i]);
            largest = Math.max(largest, Math.max(p - i / (double) draws, (i + 1.0) / draws - p));
        }
        assertTrue(largest * Math.sqrt(draws) < 1.95, "D sqrt(n) = " + largest * Math.sqrt(draws));
    }

    /**
     * The layers close: the last one's upper edge is the density's peak, 1. The published start of
     * the tail has 17 digits; rounding through 255 layers leaves some 1e-13, so 1e-11 is slack.
     */
    @Test
    void layersCloseAtThePeak() {
        double area = GaussianNoise.EDGES[0] * Math.exp(-0.5 * square(GaussianNoise.TAIL_START));
        double last = GaussianNoise.EDGES[GaussianNoise.LAYERS - 1];
        assertEquals(1, Math.exp(-0.5 * last * last) + area / last, 1e-11);
        // From memory: Marsaglia and Tsang print 0.00492867323399 for 256 layers. Its last two
        // digits differ from this sum, which closes the layers: a unit of the 12th digit and a bit.
        assertEquals(0.00492867323399, area, 2e-14);
    }

    @Test
    void sameSeedGivesTheSameDeviates() {
        GaussianNoise first = new GaussianNoise(9);
        GaussianNoise second = new GaussianNoise(9);
        for (int i = 0; i < 10_000; i++) {
            assertEquals(first.next(), second.next());
        }
    }

    private static double square(double x) {
        return x * x;
    }

    /** By the series of Marsaglia, "Evaluating the normal distribution", JSS 11 (2004) 4. */
    private static double normalDistribution(double x) {
        double sum = x;
        double term = x;
        for (int i = 3; Math.abs(term) > 1e-17; i += 2) {
            term *= x * x / i;
            sum += term;
        }
        return 0.5 + sum * Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    }
}
