package org.gaugebench.core;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Fault;

/**
 * Faults as bits of the present tick, with a bounded record of each: count, first and last time.
 */
public final class FaultLog {
    // Parameters.
    private final EventSink events;

    // State.
    private final int[] counts = new int[Fault.values().length];
    private final long[] firstUptimeMillis = new long[counts.length];
    private final long[] lastUptimeMillis = new long[counts.length];
    private int presentBits;
    private int previousBits;
    private int faultTicks;

    /**
     * Creates an empty log.
     *
     * @param events receives {@link Event#FAULT_RAISED} when a fault appears
     */
    public FaultLog(EventSink events) {
        this.events = events;
    }

    /** Begins a tick: nothing is wrong until it is raised. */
    void beginTick() {
        previousBits = presentBits;
        presentBits = 0;
    }

    /**
     * Notes a fault of this tick; announced when the tick before did not have it.
     *
     * <p><b>Range:</b> the count saturates at 2^31-1.
     *
     * @param fault which
     * @param uptimeMillis now
     */
    void raise(Fault fault, long uptimeMillis) {
        int index = fault.ordinal();
        if (presentBits == 0 && faultTicks < Integer.MAX_VALUE) {
            faultTicks++;
        }
        presentBits |= fault.bit();
        if (counts[index] == 0) {
            firstUptimeMillis[index] = uptimeMillis;
        }
        lastUptimeMillis[index] = uptimeMillis;
        if (counts[index] < Integer.MAX_VALUE) {
            counts[index]++;
        }
        if ((previousBits & fault.bit()) == 0) {
            events.onEvent(Event.FAULT_RAISED, uptimeMillis, index);
        }
    }

    /**
     * Faults of the last tick.
     *
     * @return a bit each, by {@link Fault#bit()}
     */
    public int presentBits() {
        return presentBits;
    }

    /**
     * Ticks with any fault.
     *
     * @return since power-up
     */
    public int faultTicks() {
        return faultTicks;
    }

    /**
     * How often a fault was present.
     *
     * @param fault which
     * @return ticks
     */
    public int count(Fault fault) {
        return counts[fault.ordinal()];
    }

    /**
     * When a fault was present first.
     *
     * @param fault which
     * @return uptime in milliseconds; 0 if never
     */
    public long firstUptimeMillis(Fault fault) {
        return firstUptimeMillis[fault.ordinal()];
    }

    /**
     * When a fault was present last.
     *
     * @param fault which
     * @return uptime in milliseconds; 0 if never
     */
    public long lastUptimeMillis(Fault fault) {
        return lastUptimeMillis[fault.ordinal()];
    }
}
