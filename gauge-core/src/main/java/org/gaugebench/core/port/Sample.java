package org.gaugebench.core.port;

/**
 * One reading of the converters, as raw as a driver gets it. The caller owns one object and refills
 * it for each tick.
 *
 * <p>The clock is the raw 32-bit millisecond counter of the machine: the gauge forms the difference
 * itself, so wraps, stalls and jumps are the gauge's business. The current is the mean over the
 * interval that <em>ends</em> at this clock value.
 */
public final class Sample {
    /**
     * Stands in {@link #temperatureMillicelsius} where no sensor is fitted or it does not answer.
     */
    public static final int TEMPERATURE_ABSENT = Integer.MIN_VALUE;

    /** Shunt converter, signed counts; positive when current flows into the battery. */
    public int shuntCounts;

    /** Voltage converter, counts from zero. */
    public int voltageCounts;

    /** Battery temperature in thousandths of a degree Celsius, or {@link #TEMPERATURE_ABSENT}. */
    public int temperatureMillicelsius = TEMPERATURE_ABSENT;

    /** Raw millisecond counter; wraps after 2^32 ms (49.71 days). */
    public int clockMillis;

    /** Creates an empty sample, for reuse. */
    public Sample() {}
}
