package org.gaugebench.sim.study;

/**
 * All devices at one moment, in the unit of the reading. Figures that cannot be had are NaN.
 *
 * @param atMillis from the start
 * @param sample mean and standard uncertainty of the devices whose gauge knows something
 * @param percentiles smallest, lower limit, quarter, median, three quarters, upper limit, largest
 * @param estimate first order: the error of a device with everything at its best estimate
 * @param uncertainty first order: its standard uncertainty
 * @param firstLimits first order: estimate plus and minus the expanded uncertainty
 * @param validation whether these limits may be used
 */
@SuppressWarnings("ArrayRecordComponent") // small, and nobody changes them or compares them
public record Moment(
        long atMillis,
        Sample sample,
        double[] percentiles,
        double estimate,
        double uncertainty,
        CoverageInterval firstLimits,
        Validation validation) {
    /** Places in {@link #percentiles}. */
    public static final int SMALLEST = 0;

    /** Lower end of the coverage interval. */
    public static final int LOWER = 1;

    /** A quarter of the devices lies below. */
    public static final int QUARTER = 2;

    /** Half of the devices. */
    public static final int MEDIAN = 3;

    /** Three quarters of the devices. */
    public static final int THREE_QUARTERS = 4;

    /** Upper end of the coverage interval. */
    public static final int UPPER = 5;

    /** The largest error. */
    public static final int LARGEST = 6;

    /** The coverage interval of the drawn devices. */
    public CoverageInterval limits() {
        return new CoverageInterval(percentiles[LOWER], percentiles[UPPER]);
    }
}
