package org.gaugebench.core.rules;

/** How long a figure has stayed within a span of its own largest value; starts again on a move. */
final class SteadyWatch {
    // State.
    private int minutes;
    private long lowest;
    private long highest;

    /**
     * Takes one minute's figure.
     *
     * @param value the figure
     * @param span largest difference of lowest and highest that counts as steady
     */
    void addMinute(long value, long span) {
        long newLowest = Math.min(lowest, value);
        long newHighest = Math.max(highest, value);
        if (minutes == 0 || newHighest - newLowest > span) {
            minutes = 1;
            lowest = value;
            highest = value;
        } else {
            minutes++;
            lowest = newLowest;
            highest = newHighest;
        }
    }

    void reset() {
        minutes = 0;
    }

    int minutes() {
        return minutes;
    }
}
