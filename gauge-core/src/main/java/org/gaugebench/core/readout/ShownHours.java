package org.gaugebench.core.readout;

/**
 * A time for a display that does not flicker: a new time is taken over only if it differs by 2 %
 * and at least a minute, or if the shown one is a minute old.
 *
 * <p>Rounded down, as a time to empty is a promise: to a minute below 10 h, to 5 minutes below 24
 * h, to an hour above.
 */
public final class ShownHours {
    private static final int OLD_MILLIS = 60_000;
    private static final int LEAST_CHANGE_PERCENT = 2;
    private static final int PERCENT = 100;
    private static final int MINUTES_PER_HOUR = 60;
    private static final int FINE_BELOW_MINUTES = 10 * MINUTES_PER_HOUR;
    private static final int MEDIUM_BELOW_MINUTES = 24 * MINUTES_PER_HOUR;
    private static final int MEDIUM_MINUTES = 5;

    // State.
    private boolean shown;
    private int takenMinutes;
    private long takenMillis;

    /** Creates a display that shows nothing yet. */
    public ShownHours() {}

    /**
     * Takes a time.
     *
     * <p><b>Range:</b> minutes times 100 stays below 2^38.
     *
     * @param minutes the estimate, at least 0
     * @param uptimeMillis uptime of the gauge, which never falls
     * @return whether another time was taken over
     */
    public boolean update(int minutes, long uptimeMillis) {
        long change = Math.abs((long) minutes - takenMinutes);
        boolean large =
                change >= 1 && change * PERCENT >= (long) takenMinutes * LEAST_CHANGE_PERCENT;
        if (shown && !large && uptimeMillis - takenMillis < OLD_MILLIS) {
            return false;
        }
        shown = true;
        takenMinutes = minutes;
        takenMillis = uptimeMillis;
        return true;
    }

    /** There is no time any more; the next one is shown at once. */
    public void clear() {
        shown = false;
        takenMinutes = 0;
    }

    /**
     * The time to show.
     *
     * @return minutes, rounded down to the step of their size
     */
    public int minutes() {
        if (takenMinutes < FINE_BELOW_MINUTES) {
            return takenMinutes;
        }
        int step = takenMinutes < MEDIUM_BELOW_MINUTES ? MEDIUM_MINUTES : MINUTES_PER_HOUR;
        return takenMinutes - takenMinutes % step;
    }
}
