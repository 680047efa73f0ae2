package org.gaugebench.core.estimate;

/**
 * What is usually taken out: the discharge of the last 24 hours, kept as 24 hourly sums, spread
 * over those hours. A minute in which the battery was charged on balance counts as no discharge, so
 * the figure is what the battery gave per day, not what the loads used.
 */
public final class UsualUse {
    private static final int HOURS = 24;
    private static final int MINUTES_PER_HOUR = 60;

    // State. One sum is in microamp-minutes.
    private final long[] hourSums = new long[HOURS];
    private long wholeHoursMicroampMinutes;
    private long partHourMicroampMinutes;
    private int partHourMinutes;
    private int wholeHours;
    private int nextIndex;

    /** Creates a memory that has seen nothing. */
    public UsualUse() {}

    /**
     * Takes one whole minute's mean.
     *
     * <p><b>Range:</b> an hour's sum is at most 60 x 2^31, a day's below 2^42.
     *
     * @param meanMicroamps positive into the battery
     */
    void addMinute(int meanMicroamps) {
        partHourMicroampMinutes += Math.max(0, -(long) meanMicroamps);
        partHourMinutes++;
        if (partHourMinutes == MINUTES_PER_HOUR) {
            wholeHoursMicroampMinutes += partHourMicroampMinutes - hourSums[nextIndex];
            hourSums[nextIndex] = partHourMicroampMinutes;
            nextIndex = nextIndex + 1 == HOURS ? 0 : nextIndex + 1;
            wholeHours = Math.min(wholeHours + 1, HOURS);
            partHourMicroampMinutes = 0;
            partHourMinutes = 0;
        }
    }

    /**
     * Mean discharge over the hours seen, at most the last 24. The hour under way waits until it is
     * whole; before the first whole hour there is no answer.
     *
     * @return microamps, rounded down, at least 0 (out of the battery); 0 before the first hour
     */
    public int microamps() {
        if (wholeHours == 0) {
            return 0;
        }
        long mean = wholeHoursMicroampMinutes / ((long) wholeHours * MINUTES_PER_HOUR);
        return (int) Math.min(mean, Integer.MAX_VALUE);
    }

    /**
     * How much the answer rests on.
     *
     * @return whole hours, 0 to 24
     */
    public int wholeHours() {
        return wholeHours;
    }
}
