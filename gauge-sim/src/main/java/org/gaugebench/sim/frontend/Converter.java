package org.gaugebench.sim.frontend;

/** Turns a voltage into a code. */
interface Converter {
    /** The code of one conversion. */
    int convert(double volts);
}
