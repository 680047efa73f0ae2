package org.gaugebench.core.rules;

/** How long a figure has stayed within a span of its own largest value; starts again on a move. */
final class SteadyWatch {
    // State.
    private int minutes;
    private long lowestValue;
    private long highestValue;

    /**
     * Takes one minute's figure.
     *
     * @param value the figure
     * @param span largest difference of lowest and highest that counts as steady
     */
    void addMinute(long value, long span) {
        long newLowest = Math.min(lowestValue, value);
        long newHighest = Math.max(highestValue, value);
        if (minutes == 0 || newHighest - newLowest > span) {
            minutes = 1;
            lowestValue = value;
            highestValue = value;
        } else {
            minutes++;
            lowestValue = newLowest;
            highestValue = newHighest;
        }
    }

    void reset() {
        minutes = 0;
    }

    int minutes() {
        return minutes;
    }
}
