package org.gaugebench.sim.study;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.random.SeedTree;

/**
 * Propagation of distributions by the adaptive Monte Carlo procedure of JCGM 101, 7.9, for a model
 * that is a formula. Each input draws from a stream of its own.
 *
 * @param sample number of trials, estimate and standard uncertainty
 * @param symmetric probabilistically symmetric coverage interval
 * @param shortest coverage interval
 * @param tolerance numerical tolerance that was asked for
 * @param isStable whether twice the standard error of every figure is within the tolerance
 * @param twiceStandardErrors of mean, uncertainty, lower and upper limit
 */
@SuppressWarnings("ArrayRecordComponent") // small, and nobody changes them or compares them
public record MonteCarlo(
        Sample sample,
        CoverageInterval symmetric,
        CoverageInterval shortest,
        double tolerance,
        boolean isStable,
        double[] twiceStandardErrors) {
    /**
     * Two blocks may agree by luck and end the draws too early; ten do not. The supplement asks for
     * two.
     */
    private static final int FEWEST_BLOCKS = 10;

    /** Limits that judge others are known to a fifth of the tolerance (JCGM 101, 8.2). */
    private static final double PART_OF_TOLERANCE = 0.2;

    /** At least so many trials in a block (JCGM 101, 7.9.4 b). */
    private static final int SMALLEST_BLOCK = 10_000;

    /**
     * Draws until the figures are known to a fifth of the numerical tolerance.
     *
     * @param model any function
     * @param inputs independent of each other
     * @param seed of all streams
     * @param probability of the coverage intervals
     * @param digits meaningful digits of the standard uncertainty, 1 or 2
     * @param mostTrials where to stop anyway
     */
    public static MonteCarlo of(
            Model model,
            List<Input> inputs,
            long seed,
            double probability,
            int digits,
            int mostTrials) {
        int block = Math.max(SMALLEST_BLOCK, (int) StrictMath.ceil(100 / (1 - probability)));
        Distribution.Draws[] draws = new Distribution.Draws[inputs.size()];
        SeedTree seeds = new SeedTree(seed);
        for (int i = 0; i < draws.length; i++) {
            Input input = inputs.get(i);
            draws[i] = input.distribution().draws(seeds.seedOf("input/" + input.name()));
        }
        Blocks blocks = new Blocks();
        double[] values = {};
        double[] point = new double[draws.length];
        double tolerance = 0;
        boolean enough = false;
        while (!enough && (blocks.count() == 0 || values.length + block <= mostTrials)) {
            int from = values.length;
            values = Arrays.copyOf(values, from + block);
            for (int trial = from; trial < values.length; trial++) {
                for (int i = 0; i < draws.length; i++) {
                    point[i] = draws[i].next();
                }
                values[trial] = model.valueAt(point);
            }
            double[] sorted = Arrays.copyOfRange(values, from, values.length);
            Arrays.sort(sorted);
            blocks.add(
                    Sample.of(values, from, values.length),
                    CoverageInterval.symmetric(sorted, probability));
            double spread = Sample.of(values, 0, values.length).standardUncertainty();
            tolerance = NumericalTolerance.of(spread, digits);
            enough =
                    blocks.count() >= FEWEST_BLOCKS
                            && blocks.areKnownTo(tolerance * PART_OF_TOLERANCE);
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return new MonteCarlo(
                Sample.of(values, 0, values.length),
                CoverageInterval.symmetric(sorted, probability),
                CoverageInterval.shortest(sorted, probability),
                tolerance,
                blocks.areKnownTo(tolerance),
                blocks.twiceStandardErrors());
    }
}
