package org.gaugebench.core.charge;

import org.gaugebench.core.fixed.FixedMath;

/**
 * The figures of one minute of uptime, on which every rule and filter rests: mean current, and
 * lowest, highest and mean voltage. Built up tick by tick, read when the minute is whole.
 */
public final class MinuteMean {
    /** Length of a minute. */
    public static final int MINUTE_MILLIS = 60_000;

    // State: the minute under way.
    private int millis;
    private long nanocoulombs;
    private long microvoltMillis;
    private int lowestMicrovolts = Integer.MAX_VALUE;
    private int highestMicrovolts = Integer.MIN_VALUE;
    private int lowestMicroamps = Integer.MAX_VALUE;
    private int highestMicroamps = Integer.MIN_VALUE;
    private boolean doubtful;

    // State: the last whole minute.
    private int lastMeanMicroamps;
    private int lastMeanMicrovolts;
    private int lastLowestMicrovolts;
    private int lastHighestMicrovolts;
    private int lastLowestMicroamps;
    private int lastHighestMicroamps;
    private long lastNanocoulombs;
    private boolean lastDoubtful;
    private boolean anyWhole;

    /** Creates an empty minute. */
    public MinuteMean() {}

    /**
     * How much of the minute is left.
     *
     * @return 1 to 60,000 ms
     */
    public int millisLeft() {
        return MINUTE_MILLIS - millis;
    }

    /**
     * How much of the minute has passed.
     *
     * @return 0 to 59,999 ms
     */
    public int millis() {
        return millis;
    }

    /**
     * Adds a stretch of the minute.
     *
     * <p><b>Range:</b> 2^31 uA x 60,000 ms below 2^47; 1e8 uV x 60,000 ms below 2^43.
     *
     * @param currentMicroamps positive into the battery
     * @param microvolts battery voltage
     * @param stretchMillis at most {@link #millisLeft()}
     */
    public void add(int currentMicroamps, int microvolts, int stretchMillis) {
        millis += stretchMillis;
        nanocoulombs += (long) currentMicroamps * stretchMillis;
        microvoltMillis += (long) microvolts * stretchMillis;
        lowestMicrovolts = Math.min(lowestMicrovolts, microvolts);
        highestMicrovolts = Math.max(highestMicrovolts, microvolts);
        lowestMicroamps = Math.min(lowestMicroamps, currentMicroamps);
        highestMicroamps = Math.max(highestMicroamps, currentMicroamps);
    }

    /**
     * A stretch of the minute stands on a reading that was clipped or implausible: its figures are
     * not what the battery did, and no rule may take the minute for evidence.
     */
    public void spoil() {
        doubtful = true;
    }

    /** Ends the minute: its figures become the last minute's, and a new minute begins. */
    public void close() {
        lastNanocoulombs = nanocoulombs;
        lastMeanMicroamps =
                FixedMath.clampToInt(FixedMath.divideHalfAwayFromZero(nanocoulombs, MINUTE_MILLIS));
        lastMeanMicrovolts = (int) (microvoltMillis / MINUTE_MILLIS);
        lastLowestMicrovolts = lowestMicrovolts;
        lastHighestMicrovolts = highestMicrovolts;
        lastLowestMicroamps = lowestMicroamps;
        lastHighestMicroamps = highestMicroamps;
        lastDoubtful = doubtful;
        anyWhole = true;
        abandon();
    }

    /** Drops the minute under way; the last whole minute stays. */
    public void abandon() {
        millis = 0;
        nanocoulombs = 0;
        microvoltMillis = 0;
        lowestMicrovolts = Integer.MAX_VALUE;
        highestMicrovolts = Integer.MIN_VALUE;
        lowestMicroamps = Integer.MAX_VALUE;
        highestMicroamps = Integer.MIN_VALUE;
        doubtful = false;
    }

    /**
     * Whether any stretch of the last whole minute stood on a clipped or implausible reading.
     *
     * @return true: the figures are there, but speak for nothing
     */
    public boolean isDoubtful() {
        return lastDoubtful;
    }

    /**
     * Whether any whole minute has been seen.
     *
     * @return false until then
     */
    public boolean isAnyWhole() {
        return anyWhole;
    }

    /**
     * Lowest current of the last whole minute.
     *
     * @return microamps, positive into the battery
     */
    public int lowestMicroamps() {
        return lastLowestMicroamps;
    }

    /**
     * Highest current of the last whole minute.
     *
     * @return microamps, positive into the battery
     */
    public int highestMicroamps() {
        return lastHighestMicroamps;
    }

    /**
     * Mean current of the last whole minute, halves away from zero.
     *
     * @return microamps, positive into the battery
     */
    public int meanMicroamps() {
        return lastMeanMicroamps;
    }

    /**
     * Net charge of the last whole minute.
     *
     * @return nanocoulombs, positive into the battery
     */
    public long nanocoulombs() {
        return lastNanocoulombs;
    }

    /**
     * Mean voltage of the last whole minute, rounded down.
     *
     * @return microvolts
     */
    public int meanMicrovolts() {
        return lastMeanMicrovolts;
    }

    /**
     * Lowest voltage of the last whole minute.
     *
     * @return microvolts
     */
    public int lowestMicrovolts() {
        return lastLowestMicrovolts;
    }

    /**
     * Highest voltage of the last whole minute.
     *
     * @return microvolts
     */
    public int highestMicrovolts() {
        return lastHighestMicrovolts;
    }
}
