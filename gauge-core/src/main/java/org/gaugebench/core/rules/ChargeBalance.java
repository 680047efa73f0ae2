package org.gaugebench.core.rules;

/**
 * Charge in over charge out of a week. A battery gives back what was put in, less some percent; a
 * ratio far from that says that a load or a charger bypasses the shunt. What the battery itself can
 * have taken up or given back, its whole capacity, is allowed for: a week that begins empty and
 * ends full is no fault.
 */
final class ChargeBalance {
    private static final int WEEK_MINUTES = 7 * 24 * 60;
    private static final int LOWEST_PERCENT = 85;
    private static final int HIGHEST_PERCENT = 130;

    // Parameters.
    private final long leastNanocoulombs;
    private final long storedNanocoulombs;

    // State.
    private int minutes;
    private long inNanocoulombs;
    private long outNanocoulombs;
    private boolean off;

    /**
     * Creates an empty week.
     *
     * @param leastNanocoulombs what must have gone out in a week for the ratio to say anything
     * @param storedNanocoulombs what the battery can have taken up or given back
     */
    ChargeBalance(long leastNanocoulombs, long storedNanocoulombs) {
        this.storedNanocoulombs = storedNanocoulombs;
        this.leastNanocoulombs = leastNanocoulombs;
    }

    /**
     * Takes one minute's net charge and judges at the end of each week.
     *
     * <p><b>Range:</b> 2^47 nC a minute over 10,080 minutes below 2^61, the capacity below 2^56;
     * percent are formed by dividing first.
     */
    void addMinute(long netNanocoulombs) {
        if (netNanocoulombs > 0) {
            inNanocoulombs += netNanocoulombs;
        } else {
            outNanocoulombs -= netNanocoulombs;
        }
        minutes++;
        if (minutes < WEEK_MINUTES) {
            return;
        }
        if (outNanocoulombs >= leastNanocoulombs || inNanocoulombs >= leastNanocoulombs) {
            long percent = outNanocoulombs / 100;
            off =
                    inNanocoulombs + storedNanocoulombs < percent * LOWEST_PERCENT
                            || inNanocoulombs - storedNanocoulombs > percent * HIGHEST_PERCENT;
        }
        minutes = 0;
        inNanocoulombs = 0;
        outNanocoulombs = 0;
    }

    boolean isOff() {
        return off;
    }

    void forget() {
        minutes = 0;
        inNanocoulombs = 0;
        outNanocoulombs = 0;
        off = false;
    }
}
