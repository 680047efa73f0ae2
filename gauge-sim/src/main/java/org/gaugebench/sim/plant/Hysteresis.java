package org.gaugebench.sim.plant;

/**
 * Two branches of the open-circuit voltage, one approached on charge and one on discharge, each to
 * first order in the charge that flows: the one-state model of Plett, J. Power Sources 134 (2004)
 * 262-276 (from memory). At rest nothing moves: the gap does not relax.
 *
 * <p>The span, the charge over which a branch is approached to 1/e, is 5 % of the capacity (common
 * practice, no source). The mean of the branches is the published curve.
 */
final class Hysteresis {
    private static final double SPAN_PART = 0.05;

    private final double halfGapVolts;
    private final double perCoulomb;
    private double volts;

    /**
     * Midway between the branches.
     *
     * @param halfGapVolts of the whole battery
     * @param capacityCoulombs of the whole battery
     */
    Hysteresis(double halfGapVolts, double capacityCoulombs) {
        this.halfGapVolts = halfGapVolts;
        perCoulomb = 1 / (SPAN_PART * capacityCoulombs);
    }

    /** Where the voltage stands against the mean of the branches. */
    double volts() {
        return volts;
    }

    void setVolts(double value) {
        volts = value;
    }

    /** Moves by a charge that flowed in (above 0) or out, exactly whatever the step. */
    void advance(double coulombs) {
        if (coulombs == 0) {
            return;
        }
        double kept = StrictMath.exp(-Math.abs(coulombs) * perCoulomb);
        double branch = coulombs > 0 ? halfGapVolts : -halfGapVolts;
        volts = branch + (volts - branch) * kept;
    }
}
