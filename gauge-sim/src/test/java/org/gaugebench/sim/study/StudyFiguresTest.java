package org.gaugebench.sim.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.gaugebench.sim.random.SplitMix64;
import org.junit.jupiter.api.Test;

/** The figures that a study is made of, each against a closed form or a published table. */
class StudyFiguresTest {
    private static final int DRAWS = 100_000;

    private static double[] drawn(Distribution distribution) {
        Distribution.Draws draws = distribution.draws(7);
        double[] values = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            values[i] = draws.next();
            assertTrue(values[i] >= distribution.lower() && values[i] <= distribution.upper());
        }
        return values;
    }

    private static void assertDraws(Distribution it, double belowLower, double share) {
        double[] values = drawn(it);
        Sample sample = Sample.of(values, 0, DRAWS);
        double u = it.standardUncertainty();
        // Four standard errors of each figure; the kurtosis of all of these is at most 3.
        assertEquals(it.mean(), sample.mean(), 4 * u / Math.sqrt(DRAWS), it.toString());
        assertEquals(u, sample.standardUncertainty(), 4 * u / Math.sqrt(2.0 * DRAWS));
        double below = Arrays.stream(values).filter(value -> value < belowLower).count();
        assertEquals(share, below / DRAWS, 4 * Math.sqrt(share * (1 - share) / DRAWS));
    }

    /** Each with a share of its density that has a closed form. */
    @Test
    void distributionsHaveTheirMomentsAndTheirShape() {
        assertDraws(new Distribution.Rectangular(-1, 3), 0, 0.25);
        assertDraws(new Distribution.Triangular(-2, 2), -1, 0.125);
        assertDraws(new Distribution.Arcsine(-2, 2), -Math.sqrt(2), 0.25);
        assertDraws(new Distribution.Trapezoidal(-2, 2, 0.5), -1, 1 / 6.0);
        assertDraws(new Distribution.Normal(5, 2), 3, 0.15865525393145707);
        assertEquals(2 / Math.sqrt(3), new Distribution.Rectangular(-2, 2).standardUncertainty());
        assertEquals(
                2 / Math.sqrt(6), new Distribution.Triangular(-2, 2).standardUncertainty(), 1e-15);
        assertEquals(
                2 / Math.sqrt(2), new Distribution.Arcsine(-2, 2).standardUncertainty(), 1e-15);
    }

    /** JCGM 101, 7.9.2: examples of the numerical tolerance (from memory, and worked out). */
    @Test
    void numericalTolerance() {
        assertEquals(0.000005, NumericalTolerance.of(0.00032, 2), 1e-18);
        assertEquals(0.00005, NumericalTolerance.of(0.00032, 1), 1e-18);
        assertEquals(0.5, NumericalTolerance.of(2, 1));
        assertEquals(0.05, NumericalTolerance.of(2, 2), 1e-15);
        assertEquals(50, NumericalTolerance.of(1_690, 2));
        assertEquals(0.5, NumericalTolerance.of(9.4, 1));
        assertEquals(5, NumericalTolerance.of(9.6, 1), "9.6 to one digit is 10");
        assertEquals(0, NumericalTolerance.of(0, 1));
    }

    /** R. G. Newcombe, Statistics in Medicine 17 (1998), table I, score method (from memory). */
    @Test
    void doubtAboutAShare() {
        double[][] table = {
            {81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605},
            {0, 20, 0.0000, 0.1611}, {1, 29, 0.0061, 0.1718}
        };
        for (double[] row : table) {
            Doubt doubt = new Doubt((int) row[0], (int) row[1]);
            assertEquals(row[2], doubt.lower(), 0.00005);
            assertEquals(row[3], doubt.upper(), 0.00005);
        }
    }

    /** JCGM 101, 7.7.2: of 1 to 100, 95 values from the third to the 98th. */
    @Test
    void coverageIntervals() {
        double[] sorted = IntStream.rangeClosed(1, 100).mapToDouble(it -> it).toArray();
        assertEquals(new CoverageInterval(3, 98), CoverageInterval.symmetric(sorted, 0.95));
        double[] squares = Arrays.stream(sorted).map(it -> it * it).toArray();
        assertEquals(new CoverageInterval(1, 96 * 96), CoverageInterval.shortest(squares, 0.95));
    }

    /**
     * y = x1 + 2 x2^2 with both rectangular from -1 to 1: variances 1/3 and 4 x 4/45. The second
     * has no slope at its middle, so that first order gives it nothing.
     */
    @Test
    void sharesSeeWhatHasNoSlope() {
        SplitMix64 source = new SplitMix64(3);
        List<DeviceRow> rows = new ArrayList<>();
        int devices = 4_000;
        double[] errors = new double[devices];
        for (int i = 0; i < devices; i++) {
            double first = 2 * source.nextDouble() - 1;
            double second = 2 * source.nextDouble() - 1;
            long[] steps = {(long) (first * 1e6), (long) (second * 1e6), i % 7};
            rows.add(new DeviceRow(i + 1, steps, new long[0], 0, 0, 0));
            errors[i] = first + 2 * second * second;
        }
        double whole = 1 / 3.0 + 16 / 45.0;
        assertEquals(1 / 3.0 / whole, Shares.of(errors, Shares.order(rows, 0)), 0.03);
        assertEquals(16 / 45.0 / whole, Shares.of(errors, Shares.order(rows, 1)), 0.03);
        assertEquals(
                0, Shares.of(errors, Shares.order(rows, 2)), 0.01, "it has to do with nothing");
    }

    /** Eight groups of 25 differ by chance alone: 3.5 % of the variance if that stayed in. */
    @Test
    void sharesLeaveChanceOut() {
        SplitMix64 source = new SplitMix64(4);
        int[] order = IntStream.range(0, 200).toArray();
        double sum = 0;
        for (int round = 0; round < 200; round++) {
            double[] errors =
                    IntStream.range(0, 200).mapToDouble(i -> source.nextDouble()).toArray();
            sum += Shares.of(errors, order);
        }
        // A share below nought counts as nought, so that the mean is a little above it.
        assertEquals(0.007, sum / 200, 0.005);
    }

    /** What is kept of a device does not grow with the run, and stays under 4 KiB. */
    @Test
    void aDeviceIsKeptInLessThanFourKibibytes() {
        int tolerances = 50;
        int moments = 242;
        assertTrue(DeviceRow.keptBytes(tolerances, moments) <= 4_096);
        List<DeviceRow> rows = new ArrayList<>();
        long before = used();
        int devices = 5_000;
        for (int i = 0; i < devices; i++) {
            rows.add(new DeviceRow(i, new long[tolerances], new long[moments], 0, 0, 0));
        }
        long each = (used() - before) / devices;
        assertEquals(devices, rows.size());
        assertTrue(each > 2_000 && each <= 4_096, each + " bytes");
        assertTrue(
                Math.abs(DeviceRow.keptBytes(tolerances, moments) - each) <= 64, each + " bytes");
    }

    private static long used() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
