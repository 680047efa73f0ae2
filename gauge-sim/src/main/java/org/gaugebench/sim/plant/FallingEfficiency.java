package org.gaugebench.sim.plant;

/**
 * Stored part of a lead-acid battery's charge current against state of charge: high until gassing
 * begins, low near full.
 *
 * <p>Shape: Stevens and Corey, "A Study of Lead-Acid Battery Efficiency Near Top-of-Charge and the
 * Impact on PV System Design", 25th IEEE Photovoltaic Specialists Conference (1996). Figures from
 * memory: 91 % of all charge stored from empty to 84 %, 55 % of what is put in between 79 and 84 %,
 * less than half above 90 %. The points are ours, chosen to give these three.
 */
final class FallingEfficiency {
    private static final double[] STATES = {0, 0.70, 0.815, 0.90, 1};
    private static final double[] PARTS = {0.97, 0.97, 0.55, 0.48, 0.40};

    private FallingEfficiency() {}

    /**
     * Stored part of the charge current.
     *
     * @param stateOfCharge 0 to 1
     */
    static double at(double stateOfCharge) {
        int upper = 1;
        while (upper < STATES.length - 1 && stateOfCharge > STATES[upper]) {
            upper++;
        }
        double part = (stateOfCharge - STATES[upper - 1]) / (STATES[upper] - STATES[upper - 1]);
        return PARTS[upper - 1] + part * (PARTS[upper] - PARTS[upper - 1]);
    }
}
