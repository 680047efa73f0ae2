package org.gaugebench.core.sense;

/**
 * Forms elapsed milliseconds from the machine's raw 32-bit counter.
 *
 * <p>The difference is taken modulo 2^32, so the wrap after 49.71 days is an ordinary tick. A
 * difference above half the range cannot be told from a clock that ran backwards and is refused.
 */
public final class ElapsedTime {
    /** Longest interval that a single sample may stand for. */
    public static final int LONGEST_TICK_MILLIS = 65_535;

    /** Answer when the clock went backwards. */
    public static final int BACKWARDS = -1;

    // State.
    private boolean started;
    private boolean pastFirst;
    private int lastClockMillis;
    private long uptimeMillis;

    /** Creates a clock that has seen nothing. */
    public ElapsedTime() {}

    /** Forgets the reference; the next sample sets a new one. */
    public void restart() {
        started = false;
        pastFirst = false;
        uptimeMillis = 0;
    }

    /**
     * Takes the next raw clock value.
     *
     * <p><b>Range:</b> any 32-bit pattern; result 0 to 2^31-1, or {@link #BACKWARDS}. The first
     * value after a restart sets the reference and elapses 0 ms.
     *
     * @param clockMillis the raw counter
     * @return milliseconds since the value before, or {@link #BACKWARDS}; after {@code BACKWARDS}
     *     the reference is the new value and no time has passed
     */
    public int advance(int clockMillis) {
        int elapsed = clockMillis - lastClockMillis;
        lastClockMillis = clockMillis;
        if (!started) {
            started = true;
            return 0;
        }
        pastFirst = true;
        if (elapsed < 0) {
            return BACKWARDS;
        }
        uptimeMillis += elapsed;
        return elapsed;
    }

    /**
     * Whether the last value was a second or later one, so that its difference means something.
     *
     * @return false for the value that set the reference
     */
    public boolean isPastFirst() {
        return pastFirst;
    }

    /**
     * The raw clock of the last sample.
     *
     * @return as handed in
     */
    public int lastClockMillis() {
        return lastClockMillis;
    }

    /**
     * Time since the first sample after power-up.
     *
     * @return milliseconds
     */
    public long uptimeMillis() {
        return uptimeMillis;
    }
}
