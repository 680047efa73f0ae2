package org.gaugebench.sim.scenario;

/** What becomes of the samples on their way from the converters to the gauge. */
public enum SampleMode {
    /** They arrive. */
    ARRIVING,
    /** The codes stand still, the time goes on. */
    STUCK,
    /** None arrives. */
    MISSING,
    /** The last one comes again, time and all. */
    REPEATED,
    /** The shunt's code is what a line shows that nobody drives: every bit but the sign. */
    BAD
}
