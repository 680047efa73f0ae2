package org.gaugebench.core.estimate;

/**
 * Between which currents the load has been: the lowest and the highest of up to 60 minute means,
 * widened by a quarter and by a margin. A current inside is nothing new.
 *
 * <p>After a new load has been taken over, only what came after it is looked at, until the old
 * envelope is called back or an hour has gone: otherwise the end of a short heavy load would look
 * like nothing new for an hour.
 */
final class LoadEnvelope {
    private static final int MINUTES = 60;
    private static final int WIDEN_SHIFT = 2;

    // Parameters.
    private final long marginMicroamps;

    // State: a ring of minute means, newest before the next index.
    private final int[] meanMicroamps = new int[MINUTES];
    private int count;
    private int nextIndex;
    private int lookBackMinutes = MINUTES;

    // State: the ends, and widened, worked out when something was added.
    private int lowestMicroamps = Integer.MAX_VALUE;
    private int highestMicroamps = Integer.MIN_VALUE;
    private long lowMicroamps;
    private long highMicroamps;

    LoadEnvelope(long marginMicroamps) {
        this.marginMicroamps = marginMicroamps;
    }

    /** Adds a level. While looking back less than an hour, the look grows with each. */
    void add(int microamps) {
        boolean oneLeaves = count == MINUTES && lookBackMinutes == MINUTES;
        int leavingMicroamps = meanMicroamps[nextIndex];
        meanMicroamps[nextIndex] = microamps;
        nextIndex = nextIndex + 1 == MINUTES ? 0 : nextIndex + 1;
        count = Math.min(count + 1, MINUTES);
        lookBackMinutes = Math.min(lookBackMinutes + 1, MINUTES);
        if (oneLeaves && isEndLost(leavingMicroamps, microamps)) {
            lookAtAll();
        } else {
            lowestMicroamps = Math.min(lowestMicroamps, microamps);
            highestMicroamps = Math.max(highestMicroamps, microamps);
        }
        widen();
    }

    private boolean isEndLost(int leavingMicroamps, int comingMicroamps) {
        return (leavingMicroamps == lowestMicroamps && comingMicroamps > leavingMicroamps)
                || (leavingMicroamps == highestMicroamps && comingMicroamps < leavingMicroamps);
    }

    /** From here on only this level and what comes after it is looked at. */
    void startFrom(int microamps) {
        lookBackMinutes = 0;
        lowestMicroamps = Integer.MAX_VALUE;
        highestMicroamps = Integer.MIN_VALUE;
        add(microamps);
    }

    /** The whole hour is looked at again. */
    void lookAtTheWholeHour() {
        lookBackMinutes = MINUTES;
        lookAtAll();
        widen();
    }

    /** Only where an end is lost: sixty looks are more than all else in a minute. */
    private void lookAtAll() {
        int lowest = Integer.MAX_VALUE;
        int highest = Integer.MIN_VALUE;
        int looked = Math.min(count, lookBackMinutes);
        int index = nextIndex;
        for (int i = 0; i < looked; i++) {
            index = index == 0 ? MINUTES - 1 : index - 1;
            lowest = Math.min(lowest, meanMicroamps[index]);
            highest = Math.max(highest, meanMicroamps[index]);
        }
        lowestMicroamps = lowest;
        highestMicroamps = highest;
    }

    /** <b>Range:</b> 2^31 x 5/4 plus a margin of at most 2^40 stays far below 2^63. */
    private void widen() {
        long lowest = lowestMicroamps;
        long highest = highestMicroamps;
        lowMicroamps = lowest - (Math.abs(lowest) >> WIDEN_SHIFT) - marginMicroamps;
        highMicroamps = highest + (Math.abs(highest) >> WIDEN_SHIFT) + marginMicroamps;
    }

    /** More negative than this is a heavier load than any remembered. */
    long lowMicroamps() {
        return lowMicroamps;
    }

    /** Above this the load is lighter, or the source stronger, than any remembered. */
    long highMicroamps() {
        return highMicroamps;
    }
}
