package org.gaugebench.sim.study;

/**
 * One tolerance, or what is left to chance within a run, as a cause of the error's spread. Errors
 * are those at the end of the run, in the reading's unit; NaN where the gauge knows nothing.
 *
 * @param name address of the tolerance, or {@link #NOISE}
 * @param part first order: what one standard uncertainty of it does to the error, with its sign
 * @param firstShare of the variance at each moment, first order
 * @param drawnShare of the variance at each moment, from the drawn devices
 * @param atLower error with this alone at its lower end, or two standard uncertainties below
 * @param atUpper the same at its upper end
 */
@SuppressWarnings("ArrayRecordComponent") // small, and nobody changes them or compares them
public record Cause(
        String name,
        double part,
        double[] firstShare,
        double[] drawnShare,
        double atLower,
        double atUpper) {
    /** The cause that is no tolerance: noise, clouds, whatever a seed decides. */
    public static final String NOISE = "noise and weather";

    /** Whether it is what a seed decides. */
    public boolean isNoise() {
        return name.equals(NOISE);
    }
}
