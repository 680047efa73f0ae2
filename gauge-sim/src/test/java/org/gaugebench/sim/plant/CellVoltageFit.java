package org.gaugebench.sim.plant;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * Fits the plant's voltage parameters to one record by least squares. There is no second model in
 * here: {@link Battery} is linear in its resistances, so its own answers to one ohm each (and to
 * one volt of hysteresis) are the columns of a linear fit. Time constants come from a grid.
 *
 * <p>Resistances are not negative: every choice of columns is solved, and of those without a
 * negative figure the best is taken.
 */
final class CellVoltageFit {
    private static final double[] TIME_CONSTANTS = {
        3, 10, 30, 60, 100, 200, 400, 700, 1_200, 2_000, 3_600
    };

    /** Every 5 % a point of the open-circuit voltage, where that is fitted too. */
    private static final int KNOT_PERCENT = 5;

    /** Keeps the equations solvable where two columns are alike; parts of a squared volt. */
    private static final double RIDGE = 1e-9;

    private final MeasuredRecord record;
    private final CellVoltageModel nothing;
    private final @Nullable OpenCircuitTable known;
    private final double[] knots;

    /** Rows of the matrix: knots, series, pairs, hysteresis, and the voltage to be met. */
    private final double[][] products;

    private final int columns;

    /**
     * Prepares a fit.
     *
     * @param nothing chemistry and capacity
     * @param known open-circuit voltage; null to fit it as well
     * @param record to fit on
     * @param range of the state of charge that counts
     */
    CellVoltageFit(
            CellVoltageModel nothing,
            @Nullable OpenCircuitTable known,
            MeasuredRecord record,
            StateRange range) {
        this.record = record;
        this.nothing = nothing;
        this.known = known;
        knots = known == null ? range.points(KNOT_PERCENT) : new double[0];
        double[] states = nothing.states(record);
        List<double[]> all = new ArrayList<>();
        for (int knot = 0; knot < knots.length; knot++) {
            all.add(hat(knot, states));
        }
        all.add(nothing.withSeries(1).answer(record));
        for (double seconds : TIME_CONSTANTS) {
            all.add(nothing.withPairs(1, seconds, 0, 0).answer(record));
        }
        all.add(nothing.withHalfGap(1).answer(record));
        all.add(toMeet());
        columns = all.size() - 1;
        products = products(all, range.weights(record, states));
    }

    private double[] hat(int knot, double[] states) {
        double[] ones = new double[knots.length];
        ones[knot] = 1;
        OpenCircuitTable table = OpenCircuitTable.through(knots, ones);
        return Arrays.stream(states).map(state -> table.inRow(ones, state)).toArray();
    }

    /** What the resistances have to explain: the voltage, less the open-circuit one if known. */
    private double[] toMeet() {
        double[] volts = new double[record.rows()];
        double[] open =
                known == null ? volts.clone() : nothing.withOpenCircuit(known).answer(record);
        for (int row = 0; row < volts.length; row++) {
            volts[row] = record.volts(row) - open[row];
        }
        return volts;
    }

    private static double[][] products(List<double[]> all, double[] weights) {
        double[][] products = new double[all.size()][all.size()];
        for (int a = 0; a < all.size(); a++) {
            for (int b = 0; b <= a; b++) {
                double[] left = all.get(a);
                double[] right = all.get(b);
                double sum = 0;
                for (int row = 0; row < weights.length; row++) {
                    sum += weights[row] * left[row] * right[row];
                }
                products[a][b] = sum;
                products[b][a] = sum;
            }
        }
        return products;
    }

    /** The open-circuit voltage and one resistance. */
    CellVoltageModel resistanceAlone() {
        Solution solution = new Solution();
        solution.offer(new int[] {knots.length});
        return solution.model();
    }

    /** Series resistance, up to two RC pairs and, where asked for, hysteresis. */
    CellVoltageModel wholePlant(boolean hysteresis) {
        Solution solution = new Solution();
        int series = knots.length;
        int gap = columns - 1;
        for (int last = 0; last <= (hysteresis ? 1 : 0); last++) {
            for (int fast = series; fast < gap; fast++) {
                for (int slow = fast; slow < gap; slow++) {
                    int[] withSeries = {series, fast, slow, last == 1 ? gap : series};
                    solution.offer(Arrays.stream(withSeries).distinct().toArray());
                    int[] without = {fast, slow, last == 1 ? gap : slow};
                    solution.offer(Arrays.stream(without).distinct().toArray());
                }
            }
        }
        return solution.model();
    }

    /** The best choice of columns so far. */
    private final class Solution {
        private double leastSquares = Double.POSITIVE_INFINITY;
        private int[] chosen = {};
        private double[] factors = {};

        void offer(int[] more) {
            int[] use = new int[knots.length + more.length];
            for (int i = 0; i < use.length; i++) {
                use[i] = i < knots.length ? i : more[i - knots.length];
            }
            Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(use.length, use.length);
            ArrayRealVector right = new ArrayRealVector(use.length);
            for (int a = 0; a < use.length; a++) {
                right.setEntry(a, products[use[a]][columns]);
                for (int b = 0; b < use.length; b++) {
                    matrix.setEntry(a, b, products[use[a]][use[b]] + (a == b ? RIDGE : 0));
                }
            }
            double[] found = new CholeskyDecomposition(matrix).getSolver().solve(right).toArray();
            double squares = products[columns][columns];
            for (int a = 0; a < use.length; a++) {
                if (found[a] < 0) {
                    return;
                }
                squares -= found[a] * right.getEntry(a);
            }
            if (squares < leastSquares) {
                leastSquares = squares;
                chosen = use;
                factors = found;
            }
        }

        CellVoltageModel model() {
            CellVoltageModel model =
                    nothing.withOpenCircuit(
                            known == null
                                    ? OpenCircuitTable.through(
                                            knots, Arrays.copyOf(factors, knots.length))
                                    : known);
            double[] ohms = new double[2];
            double[] seconds = new double[2];
            int pairs = 0;
            for (int i = knots.length; i < chosen.length; i++) {
                int column = chosen[i] - knots.length;
                if (column == 0) {
                    model = model.withSeries(factors[i]);
                } else if (column <= TIME_CONSTANTS.length) {
                    ohms[pairs] = factors[i];
                    seconds[pairs++] = TIME_CONSTANTS[column - 1];
                } else {
                    model = model.withHalfGap(factors[i]);
                }
            }
            return model.withPairs(ohms[0], seconds[0], ohms[1], seconds[1]);
        }
    }
}
