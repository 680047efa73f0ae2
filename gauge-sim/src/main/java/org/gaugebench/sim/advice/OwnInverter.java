package org.gaugebench.sim.advice;

/**
 * An inverter, as its plate says.
 *
 * @param watts that it can give for hours
 * @param surgeWatts that it can give for moments; as {@code watts} where nothing is known
 * @param efficiency part of what it takes that comes out, above 0 to 1
 */
public record OwnInverter(double watts, double surgeWatts, double efficiency) {
    /** Volts of a 12 V battery under load at which it counts as empty: 1.75 V a cell. */
    private static final double EMPTY_VOLTS = 10.5;

    /** Most of the time nobody knows it; common practice, no source. */
    public static final double USUAL_EFFICIENCY = 0.88;

    /** Amps that it takes at an output, from a battery that is nearly empty. */
    double ampsAt(double outputWatts, int nominalVolts) {
        return outputWatts / (EMPTY_VOLTS * nominalVolts / 12) / efficiency;
    }
}
