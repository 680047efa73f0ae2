package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;

/** What stands between the true current and the converter's input. */
interface ShuntPath {
    /**
     * Voltage at the converter's input.
     *
     * @param amps the current that the converter sees
     * @param truth of the same moment, for what depends on more than that current
     */
    double voltsAt(double amps, Truth truth);

    /** Sets the input-referred offset. */
    void setOffsetNanovolts(long nanovolts);
}
