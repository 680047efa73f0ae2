package org.gaugebench.core.estimate;

import org.gaugebench.core.port.Sample;

/** What the estimates rest on, all of one instant. The caller owns one object and fills it. */
public final class EstimateInput {
    /** Whether the charge is known at all. */
    public boolean known;

    /** Remaining charge in nanocoulombs, at least 0. */
    public long chargeNanocoulombs;

    /** Low end of the error band around it; at most the charge. */
    public long lowNanocoulombs;

    /** High end of the error band around it; at least the charge. */
    public long highNanocoulombs;

    /** Current of the last sample, positive into the battery. */
    public int presentMicroamps;

    /** Battery temperature, or {@link Sample#TEMPERATURE_ABSENT}. */
    public int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;

    /** Creates an input in which nothing is known. */
    public EstimateInput() {}
}
