package org.gaugebench.core.estimate;

/**
 * Mean current of the last sixty seconds: a box of twelve means of five seconds, moved on every
 * five seconds. Not a single pole: a step is taken over in a straight line and is complete after
 * sixty seconds. During the first minute it is the mean of what has been seen.
 */
public final class RollingMinute {
    /** Slots in a minute. */
    public static final int SLOTS = 12;

    // State.
    private final int[] slotMicroamps = new int[SLOTS];
    private long sumMicroamps;
    private int count;
    private int nextIndex;

    /** Creates a box that has seen nothing. */
    public RollingMinute() {}

    /**
     * Takes the mean of the next five seconds.
     *
     * <p><b>Range:</b> the sum is at most 12 x 2^31.
     *
     * @param meanMicroamps positive into the battery
     */
    void addSlot(int meanMicroamps) {
        sumMicroamps += (long) meanMicroamps - slotMicroamps[nextIndex];
        slotMicroamps[nextIndex] = meanMicroamps;
        nextIndex = nextIndex + 1 == SLOTS ? 0 : nextIndex + 1;
        count = Math.min(count + 1, SLOTS);
    }

    /**
     * The mean.
     *
     * @return microamps, rounded toward zero, positive into the battery; 0 before the first slot
     */
    public int microamps() {
        return count == 0 ? 0 : (int) (sumMicroamps / count);
    }
}
