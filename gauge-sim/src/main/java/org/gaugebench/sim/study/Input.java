package org.gaugebench.sim.study;

/**
 * An input quantity of a measurement model.
 *
 * @param name for people
 * @param distribution what is known of it
 * @param degreesOfFreedom of its standard uncertainty; infinity where that is known (JCGM 100, G.4)
 */
public record Input(String name, Distribution distribution, double degreesOfFreedom) {
    /** An input whose standard uncertainty is known. */
    public Input(String name, Distribution distribution) {
        this(name, distribution, Double.POSITIVE_INFINITY);
    }
}
