package org.gaugebench.sim.advice;

/**
 * Part of the 20 h charge of a lead-acid battery that comes out in one go at a current.
 *
 * <p>Straight lines, on logarithmic scales, between the rows of a published table of an
 * absorbed-glass-mat battery: 100, 92, 90, 85, 80, 73 and 60 Ah in 20, 10, 8, 5, 2, 1 and half an
 * hour. One Peukert exponent for all rates misses its rows by up to 5 points. Never more than the
 * 20 h charge: at small currents the law would promise charge that is not there. It holds for one
 * steady current only; after a rest more comes out (Doerffel and Abu Sharkh, 2006).
 */
final class FastDischarge {
    private static final double[] HOURS = {20, 10, 8, 5, 2, 1, 0.5};
    private static final double[] PARTS = {1.00, 0.92, 0.90, 0.85, 0.80, 0.73, 0.60};

    private FastDischarge() {}

    /** Above 0, at most 1; beyond the last row its slope goes on. */
    static double partOf(double ampHours, double amps) {
        double rate = amps / ampHours;
        if (rate <= rate(0)) {
            return 1;
        }
        int upper = 1;
        while (upper < HOURS.length - 1 && rate > rate(upper)) {
            upper++;
        }
        double slope =
                StrictMath.log(PARTS[upper] / PARTS[upper - 1])
                        / StrictMath.log(rate(upper) / rate(upper - 1));
        return PARTS[upper - 1] * StrictMath.pow(rate / rate(upper - 1), slope);
    }

    /** Current over charge at which a row was measured. */
    private static double rate(int row) {
        return PARTS[row] / HOURS[row];
    }
}
