package org.gaugebench.sim.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.study.Distribution.Normal;
import org.gaugebench.sim.study.Distribution.Rectangular;
import org.gaugebench.sim.study.Validation.Answer;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of JCGM 101:2008 and others, by drawing and by first order side by side. Where a
 * closed form exists the tolerance is what the number of trials leaves open: twice the standard
 * error that the run itself states; elsewhere it is that of the printed digits.
 */
class MonteCarloReferenceTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final int TRIALS = 1_000_000;

    private static double sum(double[] x) {
        double sum = 0;
        for (double each : x) {
            sum += each;
        }
        return sum;
    }

    private static List<Input> four(Distribution first, Distribution last) {
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            inputs.add(new Input("x" + i, i < 3 ? first : last));
        }
        return inputs;
    }

    private static Distribution rectangular(double standardUncertainty) {
        double half = standardUncertainty * Math.sqrt(3);
        return new Rectangular(-half, half);
    }

    private static Validation compared(FirstOrder first, MonteCarlo drawn) {
        return Validation.of(
                first.interval(0.95, INFINITE),
                drawn.symmetric(),
                drawn.tolerance(),
                drawn.twiceStandardErrors()[2],
                drawn.twiceStandardErrors()[3]);
    }

    /** JCGM 101, 9.2.2, table 2: four normal ones make 2.0 and plus and minus 3.92. */
    @Test
    void sumOfNormals() {
        List<Input> inputs = four(new Normal(0, 1), new Normal(0, 1));
        MonteCarlo drawn = MonteCarlo.of(MonteCarloReferenceTest::sum, inputs, 1, 0.95, 2, TRIALS);
        assertTrue(drawn.isStable());
        assertEquals(0, drawn.sample().mean(), 0.01);
        assertEquals(2.0, drawn.sample().standardUncertainty(), 0.01);
        assertEquals(-3.92, drawn.symmetric().lower(), 0.02);
        assertEquals(3.92, drawn.symmetric().upper(), 0.02);
        FirstOrder first = FirstOrder.of(MonteCarloReferenceTest::sum, inputs);
        assertEquals(2, first.standardUncertainty(), 1e-9);
        assertEquals(3.91993, first.interval(0.95, INFINITE).upper(), 1e-5);
        assertEquals(Answer.AGREES, compared(first, drawn).answer());
    }

    /**
     * JCGM 101, 9.2.3, table 3: four rectangular ones make plus and minus 3.88; exactly twice the
     * root of three times 2 - (3/5)^(1/4), from the density of their sum.
     */
    @Test
    void sumOfRectangulars() {
        double exact = 2 * Math.sqrt(3) * (2 - Math.sqrt(Math.sqrt(0.6)));
        assertEquals(3.88, exact, 0.005);
        List<Input> inputs = four(rectangular(1), rectangular(1));
        MonteCarlo drawn = MonteCarlo.of(MonteCarloReferenceTest::sum, inputs, 2, 0.95, 2, TRIALS);
        assertEquals(2.0, drawn.sample().standardUncertainty(), 0.01);
        assertEquals(exact, drawn.symmetric().upper(), drawn.tolerance());
        assertEquals(-exact, drawn.symmetric().lower(), drawn.tolerance());
        // 3.92 against 3.88: the same to two digits of u, so first order may be used. The gap is
        // 0.0405 of an allowed 0.05, so that one seed of thirty leaves it open; this one does not.
        FirstOrder first = FirstOrder.of(MonteCarloReferenceTest::sum, inputs);
        assertEquals(Answer.AGREES, compared(first, drawn).answer());
    }

    /** JCGM 101, 9.2.4, table 4: one large rectangular one; first order says 19.9 for 17.0. */
    @Test
    void sumWithALargeRectangular() {
        List<Input> inputs = four(rectangular(1), rectangular(10));
        MonteCarlo drawn = MonteCarlo.of(MonteCarloReferenceTest::sum, inputs, 1, 0.95, 2, TRIALS);
        assertEquals(10.1, drawn.sample().standardUncertainty(), 0.1);
        assertEquals(-17.0, drawn.symmetric().lower(), 0.1);
        assertEquals(17.0, drawn.symmetric().upper(), 0.1);
        FirstOrder first = FirstOrder.of(MonteCarloReferenceTest::sum, inputs);
        assertEquals(Math.sqrt(103), first.standardUncertainty(), 1e-9);
        assertEquals(19.9, first.interval(0.95, INFINITE).upper(), 0.05);
        Validation validation = compared(first, drawn);
        assertEquals(Answer.DIFFERS, validation.answer());
        assertEquals(2.9, validation.upperGap(), 0.1);
    }

    /** JCGM 101, 9.3: a weight held against another in air, as excess over 100 g in milligrams. */
    @Test
    void massCalibration() {
        List<Input> inputs =
                List.of(
                        new Input("reference", new Normal(100_000, 0.050)),
                        new Input("difference", new Normal(1.234, 0.020)),
                        new Input("air", new Rectangular(1.10, 1.30)),
                        new Input("weight", new Rectangular(7e3, 9e3)),
                        new Input("reference density", new Rectangular(7.95e3, 8.05e3)));
        Model model = x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;
        FirstOrder first = FirstOrder.of(model, inputs);
        assertEquals(1.2340, first.estimate(), 0.00005);
        assertEquals(0.0539, first.standardUncertainty(), 0.00005);
        assertEquals(1.1285, first.interval(0.95, INFINITE).lower(), 0.0001);
        assertEquals(1.3395, first.interval(0.95, INFINITE).upper(), 0.0001);
        MonteCarlo drawn = MonteCarlo.of(model, inputs, 1, 0.95, 2, TRIALS);
        assertEquals(1.2340, drawn.sample().mean(), 0.0005);
        // The second moment has a closed form: 0.07548. The supplement prints 0.0754.
        assertEquals(0.0754, drawn.sample().standardUncertainty(), 0.0005);
        assertEquals(1.0834, drawn.symmetric().lower(), 0.003);
        assertEquals(1.3825, drawn.symmetric().upper(), 0.003);
        assertEquals(Answer.DIFFERS, compared(first, drawn).answer());
    }

    private static MonteCarlo squares(double at) {
        List<Input> inputs =
                List.of(
                        new Input("x1", new Normal(at, 0.005)),
                        new Input("x2", new Normal(0, 0.005)));
        return MonteCarlo.of(x -> x[0] * x[0] + x[1] * x[1], inputs, 1, 0.95, 2, TRIALS);
    }

    /** JCGM 101, 9.4: comparison loss of a microwave power meter; first order sees nothing at 0. */
    @Test
    void comparisonLoss() {
        MonteCarlo nought = squares(0);
        assertEquals(50e-6, nought.sample().mean(), 0.5e-6);
        assertEquals(50e-6, nought.sample().standardUncertainty(), 0.5e-6);
        assertEquals(0, nought.shortest().lower(), 0.5e-6);
        assertEquals(50e-6 * Math.log(20), nought.shortest().upper(), 1.5e-6, "exponential");
        FirstOrder first =
                FirstOrder.of(
                        x -> x[0] * x[0] + x[1] * x[1],
                        List.of(
                                new Input("x1", new Normal(0, 0.005)),
                                new Input("x2", new Normal(0, 0.005))));
        assertEquals(0, first.standardUncertainty(), 1e-15);
        assertEquals(Answer.DIFFERS, compared(first, nought).answer());

        MonteCarlo near = squares(0.010);
        assertEquals(150e-6, near.sample().mean(), 0.5e-6);
        assertEquals(112e-6, near.sample().standardUncertainty(), 0.5e-6);
        assertEquals(367e-6, near.shortest().upper(), 3e-6, "an end of a shortest interval jumps");

        MonteCarlo far = squares(0.050);
        assertEquals(2_550e-6, far.sample().mean(), 5e-6);
        assertEquals(502e-6, far.sample().standardUncertainty(), 5e-6);
        assertEquals(1_590e-6, far.shortest().lower(), 25e-6);
        assertEquals(3_543e-6, far.shortest().upper(), 25e-6);
    }

    /** NPL report DEM-ES-011, 9.2: the logarithm of a rectangular one from 0.1 to 1.1. */
    @Test
    void logarithm() {
        List<Input> inputs = List.of(new Input("x", new Rectangular(0.1, 1.1)));
        FirstOrder first = FirstOrder.of(x -> Math.log(x[0]), inputs);
        assertEquals(-0.511, first.estimate(), 0.0005);
        assertEquals(0.481, first.standardUncertainty(), 0.0005);
        MonteCarlo drawn = MonteCarlo.of(x -> Math.log(x[0]), inputs, 1, 0.95, 2, TRIALS);
        assertEquals(-0.665, drawn.sample().mean(), 0.005);
        assertEquals(0.606, drawn.sample().standardUncertainty(), 0.005);
        assertEquals(-1.895, drawn.shortest().lower(), 0.01);
        assertEquals(0.095, drawn.shortest().upper(), 0.001);
        assertEquals(Answer.DIFFERS, compared(first, drawn).answer());
    }

    /** NIST Technical Note 1900, example E3: a viscosity by a falling ball. */
    @Test
    void fallingBall() {
        List<Input> inputs =
                List.of(
                        new Input("mu_c", new Normal(4.63, 0.0463)),
                        new Input("t_m", new Normal(61, 6.1)),
                        new Input("t_c", new Normal(36.6, 5.49)),
                        new Input("rho_b", new Normal(2217, 0.5)),
                        new Input("rho_m", new Normal(1180, 0.5)),
                        new Input("rho_c", new Normal(810, 0.5)));
        Model model = x -> x[0] * x[1] * (x[3] - x[4]) / (x[2] * (x[3] - x[5]));
        FirstOrder first = FirstOrder.of(model, inputs);
        assertEquals(5.69, first.estimate(), 0.005);
        MonteCarlo drawn = MonteCarlo.of(model, inputs, 1, 0.95, 2, TRIALS);
        assertTrue(drawn.isStable(), "more trials than the example needs");
        // Published to 0.01 from draws of their own; ours are known to the stated tolerance.
        assertEquals(5.82, drawn.sample().mean(), 0.01 + drawn.tolerance());
        assertEquals(1.11, drawn.sample().standardUncertainty(), 0.01 + drawn.tolerance());
        assertEquals(4.05, drawn.symmetric().lower(), 0.01 + drawn.tolerance());
        assertEquals(8.39, drawn.symmetric().upper(), 0.01 + drawn.tolerance());
        assertEquals(Answer.DIFFERS, compared(first, drawn).answer());
    }
}
