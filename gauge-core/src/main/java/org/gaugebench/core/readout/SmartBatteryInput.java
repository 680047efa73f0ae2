package org.gaugebench.core.readout;

import org.gaugebench.core.port.Sample;

/** What the bus view is filled from, all of one instant. The caller owns one object. */
public final class SmartBatteryInput {
    /** Whether the charge is known at all. */
    public boolean known;

    /** Low end of the error band of the remaining charge, in nanocoulombs. */
    public long lowNanocoulombs;

    /** High end of the error band of the remaining charge, in nanocoulombs. */
    public long highNanocoulombs;

    /** Full-charge capacity in nanocoulombs, above 0. */
    public long fullChargeNanocoulombs;

    /** Current of the last sample, positive into the battery. */
    public int currentMicroamps;

    /** Mean current of the last sixty seconds. */
    public int oneMinuteMicroamps;

    /** Battery voltage. */
    public int voltageMicrovolts;

    /** Battery temperature, or {@link Sample#TEMPERATURE_ABSENT}. */
    public int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;

    /** Cycles so far, at least 0. */
    public long cycleCount;

    /** Minutes to full, or -1 where there is no estimate. */
    public int timeToFullMinutes = -1;

    /** Whether full is proven. */
    public boolean fullProven;

    /** Creates an input in which nothing is known. */
    public SmartBatteryInput() {}
}
