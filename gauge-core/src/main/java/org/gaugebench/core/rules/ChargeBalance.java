package org.gaugebench.core.rules;

/**
 * Charge in over charge out of a week. A battery gives back what was put in, less some percent; a
 * ratio far from that says that a load or a charger bypasses the shunt, unless the difference is no
 * more than the battery itself can have taken or given within the week: its capacity.
 */
final class ChargeBalance {
    private static final int WEEK_MINUTES = 7 * 24 * 60;
    private static final int LOWEST_PERCENT = 85;
    private static final int HIGHEST_PERCENT = 130;

    // Parameters.
    private final long capacityNanocoulombs;

    // State.
    private int minutes;
    private long inNanocoulombs;
    private long outNanocoulombs;
    private boolean off;

    /**
     * Creates an empty week.
     *
     * @param capacityNanocoulombs what the battery can hold
     */
    ChargeBalance(long capacityNanocoulombs) {
        this.capacityNanocoulombs = capacityNanocoulombs;
    }

    /**
     * Takes one minute's net charge and judges at the end of each week.
     *
     * <p><b>Range:</b> 2^47 nC a minute over 10,080 minutes below 2^61; percent are formed by
     * dividing first.
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
        long percent = outNanocoulombs / 100;
        off =
                Math.abs(inNanocoulombs - outNanocoulombs) > capacityNanocoulombs
                        && (inNanocoulombs < percent * LOWEST_PERCENT
                                || inNanocoulombs > percent * HIGHEST_PERCENT);
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
