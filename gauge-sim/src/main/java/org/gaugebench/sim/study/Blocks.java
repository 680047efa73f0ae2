package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.List;

/**
 * The adaptive procedure of JCGM 101, 7.9.4: draws come in blocks of one size, and how far the
 * blocks' figures lie apart tells how well their mean is known.
 */
final class Blocks {
    private static final int FIGURES = 4;

    private final List<double[]> blocks = new ArrayList<>();

    /** Adds the figures of a block. */
    void add(Sample block, CoverageInterval limits) {
        blocks.add(
                new double[] {
                    block.mean(), block.standardUncertainty(), limits.lower(), limits.upper()
                });
    }

    int count() {
        return blocks.size();
    }

    /** Twice the standard error of each figure: mean, uncertainty, lower and upper limit. */
    double[] twiceStandardErrors() {
        double[] errors = new double[FIGURES];
        int count = blocks.size();
        for (int figure = 0; figure < FIGURES; figure++) {
            double sum = 0;
            for (double[] block : blocks) {
                sum += block[figure];
            }
            double mean = sum / count;
            double squares = 0;
            for (double[] block : blocks) {
                squares += (block[figure] - mean) * (block[figure] - mean);
            }
            errors[figure] =
                    count < 2
                            ? Double.POSITIVE_INFINITY
                            : 2 * StrictMath.sqrt(squares / ((double) count * (count - 1)));
        }
        return errors;
    }

    /** Mean of the blocks' standard uncertainties; 0 without a block. */
    double meanUncertainty() {
        double sum = 0;
        for (double[] block : blocks) {
            sum += block[1];
        }
        return blocks.isEmpty() ? 0 : sum / blocks.size();
    }

    /** Whether all four figures are known to a tolerance. */
    boolean areKnownTo(double tolerance) {
        for (double error : twiceStandardErrors()) {
            if (error > tolerance) {
                return false;
            }
        }
        return true;
    }
}
