package org.gaugebench.sim.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gaugebench.sim.study.Distribution.Normal;
import org.gaugebench.sim.study.Distribution.Rectangular;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of JCGM 100:2008 (the GUM) and its coverage factors. Tolerances are half a unit
 * of the last digit that is printed, unless a line says otherwise.
 */
class FirstOrderReferenceTest {
    private static final double NANOMETRES = 50_000_000;

    /** JCGM 100, H.1: the difference of the comparator, in nanometres. */
    private static final List<Input> COMPARATOR =
            List.of(
                    new Input("repeats", new Normal(215, 5.8), 24),
                    new Input("random", new Normal(0, 3.9), 5),
                    new Input("systematic", new Normal(0, 6.7), 8));

    private static FirstOrder comparator() {
        return FirstOrder.of(x -> x[0] + x[1] + x[2], COMPARATOR);
    }

    /**
     * JCGM 100, H.1.3: l = l_s + d - l_s (delta alpha theta + alpha_s delta theta), all lengths in
     * nanometres beyond 50 mm.
     */
    static double endGauge(double[] x) {
        double standard = 623 + x[0];
        double expansion = x[3] * x[4] + x[2] * x[5];
        return standard + x[1] - (NANOMETRES + standard) * expansion;
    }

    /** Its inputs, with the degrees of freedom of H.1.6. */
    static List<Input> endGaugeInputs() {
        FirstOrder difference = comparator();
        return List.of(
                new Input("standard", new Normal(0, 25), 18),
                new Input(
                        "difference",
                        new Normal(215, difference.standardUncertainty()),
                        difference.degreesOfFreedom()),
                new Input("expansion", new Rectangular(9.5e-6, 13.5e-6)),
                new Input("difference of expansions", new Rectangular(-1e-6, 1e-6), 50),
                new Input("temperature", new Normal(-0.1, 0.41)),
                new Input("difference of temperatures", new Rectangular(-0.05, 0.05), 2));
    }

    @Test
    void endGaugeCalibration() {
        FirstOrder difference = comparator();
        assertEquals(9.7, difference.standardUncertainty(), 0.05);
        // 25.45 with every digit kept; the GUM takes the fourth power of the rounded 9.7 nm.
        assertEquals(25.6, difference.degreesOfFreedom(), 0.2);

        FirstOrder length = FirstOrder.of(FirstOrderReferenceTest::endGauge, endGaugeInputs());
        assertEquals(838, length.estimate(), 0.5, "50.000 838 mm");
        assertEquals(32, length.standardUncertainty(), 0.5);
        assertEquals(25, Math.abs(length.parts()[0]), 0.5);
        assertEquals(9.7, Math.abs(length.parts()[1]), 0.05);
        assertEquals(0, length.parts()[2], 1e-3, "the mean difference of temperatures is zero");
        assertEquals(2.9, Math.abs(length.parts()[3]), 0.05);
        assertEquals(0, length.parts()[4], 1e-3, "the mean difference of expansions is zero");
        assertEquals(16.6, Math.abs(length.parts()[5]), 0.1, "16.60; the GUM prints 16.6");
        assertEquals(16, Math.floor(length.degreesOfFreedom()));

        double factor = StudentT.coverageFactor(0.99, length.degreesOfFreedom());
        assertEquals(2.92, factor, 0.005);
        // The GUM multiplies the rounded 32 nm: 93; the rounding of u alone is 1.5 nm here.
        assertEquals(93, factor * length.standardUncertainty(), 1.5);
    }

    /** JCGM 100, H.1.7: with the terms of second order 34 nm, which drawing gets by itself. */
    @Test
    void endGaugeNeedsTheSecondOrder() {
        MonteCarlo drawn =
                MonteCarlo.of(
                        FirstOrderReferenceTest::endGauge, endGaugeInputs(), 1, 0.99, 2, 1_000_000);
        assertEquals(34, drawn.sample().standardUncertainty(), 0.5);
        assertEquals(838, drawn.sample().mean(), 0.5);
    }

    private static final double[] VOLTS = {5.007, 4.994, 5.005, 4.990, 4.999};
    private static final double[] MILLIAMPS = {19.663, 19.639, 19.640, 19.685, 19.678};
    private static final double[] RADIANS = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

    private static double mean(double[] values) {
        return Sample.of(values, 0, values.length).mean();
    }

    private static double ofMean(double[] values) {
        return Sample.of(values, 0, values.length).standardUncertainty() / Math.sqrt(values.length);
    }

    private static double correlation(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - mean(a)) * (b[i] - mean(b));
        }
        return sum / (a.length * (a.length - 1.0)) / ofMean(a) / ofMean(b);
    }

    private static double together(FirstOrder a, FirstOrder b, double[][] correlations) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                sum += a.parts()[i] * b.parts()[j] * correlations[i][j];
            }
        }
        return sum / a.standardUncertainty() / b.standardUncertainty();
    }

    /** JCGM 100, H.2: resistance, reactance and impedance from readings that go together. */
    @Test
    void impedanceFromReadingsThatGoTogether() {
        double[][] r = {
            {1, correlation(VOLTS, MILLIAMPS), correlation(VOLTS, RADIANS)},
            {correlation(VOLTS, MILLIAMPS), 1, correlation(MILLIAMPS, RADIANS)},
            {correlation(VOLTS, RADIANS), correlation(MILLIAMPS, RADIANS), 1}
        };
        assertEquals(-0.36, r[0][1], 0.005);
        assertEquals(0.86, r[0][2], 0.005);
        assertEquals(-0.65, r[1][2], 0.005);
        List<Input> inputs =
                List.of(
                        new Input("V", new Normal(mean(VOLTS), ofMean(VOLTS))),
                        new Input("I", new Normal(mean(MILLIAMPS), ofMean(MILLIAMPS))),
                        new Input("phi", new Normal(mean(RADIANS), ofMean(RADIANS))));
        Model resistance = x -> x[0] / x[1] * 1e3 * Math.cos(x[2]);
        Model reactance = x -> x[0] / x[1] * 1e3 * Math.sin(x[2]);
        Model impedance = x -> x[0] / x[1] * 1e3;
        FirstOrder ohms = FirstOrder.of(resistance, inputs, r);
        FirstOrder reactive = FirstOrder.of(reactance, inputs, r);
        FirstOrder whole = FirstOrder.of(impedance, inputs, r);
        assertEquals(127.732, ohms.estimate(), 0.0005);
        assertEquals(0.071, ohms.standardUncertainty(), 0.0005);
        assertEquals(219.847, reactive.estimate(), 0.0005);
        // 0.2956 with every digit kept; the GUM went on from rounded figures and prints 0.295.
        assertEquals(0.295, reactive.standardUncertainty(), 0.001);
        assertEquals(254.260, whole.estimate(), 0.0005);
        assertEquals(0.236, whole.standardUncertainty(), 0.0005);
        assertEquals(-0.588, together(ohms, reactive, r), 0.0005);
        assertEquals(-0.485, together(ohms, whole, r), 0.0005);
        assertEquals(0.993, together(reactive, whole, r), 0.0005);

        // What somebody gets who leaves the correlations out: not the published figures.
        assertEquals(0.195, FirstOrder.of(resistance, inputs).standardUncertainty(), 0.0005);
        assertEquals(0.201, FirstOrder.of(reactance, inputs).standardUncertainty(), 0.0005);
        assertEquals(0.204, FirstOrder.of(impedance, inputs).standardUncertainty(), 0.0005);
    }

    /** Welch and Satterthwaite, JCGM 100, G.4: 0.57 with 9 degrees and 0.25 known make 12.8. */
    @Test
    void effectiveDegreesOfFreedom() {
        FirstOrder sum =
                FirstOrder.of(
                        x -> x[0] + x[1],
                        List.of(
                                new Input("a", new Normal(0, 0.57), 9),
                                new Input("b", new Normal(0, 0.25))));
        assertEquals(12.8, sum.degreesOfFreedom(), 0.05);
    }

    /** JCGM 100, table G.2, and the normal factors of its table G.1 (from memory, undisputed). */
    @Test
    void coverageFactors() {
        double[][] table = {
            {1, 12.71, 63.66}, {2, 4.30, 9.92}, {3, 3.18, 5.84}, {4, 2.78, 4.60},
            {5, 2.57, 4.03}, {8, 2.31, 3.36}, {10, 2.23, 3.17}, {16, 2.12, 2.92},
            {20, 2.09, 2.85}, {50, 2.01, 2.68}, {1e9, 1.960, 2.576}
        };
        for (double[] row : table) {
            assertEquals(row[1], StudentT.coverageFactor(0.95, row[0]), 0.005, "95 % " + row[0]);
            assertEquals(row[2], StudentT.coverageFactor(0.99, row[0]), 0.005, "99 % " + row[0]);
        }
        assertEquals(1.959963984540054, StudentT.coverageFactor(0.95, 1 / 0.0), 1e-13);
        assertEquals(1, StudentT.coverageFactor(0.6826894921370859, 1 / 0.0), 1e-13);
    }
}
