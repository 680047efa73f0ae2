package org.gaugebench.core;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Fault;

/**
 * Faults as bits, with a bounded record of each: count, first and last time. The bits of a tick and
 * the bits that stand are kept apart: only the first say that this tick's figures are doubtful.
 */
public final class FaultLog {
    /** The standing faults that the diagnosis judges; the memory's are judged where it is used. */
    static final int DIAGNOSED_BITS = Fault.MEMORY_FAILING.bit() - Fault.POLARITY_REVERSED.bit();

    /** What hides the charge that flowed: a rail, or a frame of garbage. */
    static final int CHARGE_HIDDEN_BITS =
            Fault.SHUNT_CLIPPED.bit() | Fault.COUNTS_IMPLAUSIBLE.bit();

    private static final Fault[] FAULTS = Fault.values();

    // Parameters.
    private final EventSink events;

    // State.
    private final int[] counts = new int[FAULTS.length];
    private final long[] firstUptimeMillis = new long[counts.length];
    private final long[] lastUptimeMillis = new long[counts.length];
    private int momentaryBits;
    private int previousBits;
    private int standingBits;
    private int faultTicks;

    /**
     * Creates an empty log.
     *
     * @param events receives {@link Event#FAULT_RAISED} when a fault appears
     */
    public FaultLog(EventSink events) {
        this.events = events;
    }

    /** Power came up: the log starts anew, its times are uptimes. */
    void restart() {
        for (int i = 0; i < counts.length; i++) {
            counts[i] = 0;
            firstUptimeMillis[i] = 0;
            lastUptimeMillis[i] = 0;
        }
        momentaryBits = 0;
        previousBits = 0;
        standingBits = 0;
        faultTicks = 0;
    }

    /** Begins a tick: nothing momentary is wrong until it is raised. */
    void beginTick() {
        previousBits = momentaryBits;
        momentaryBits = 0;
    }

    /**
     * Notes a momentary fault of this tick; announced when the tick before did not have it.
     *
     * <p><b>Range:</b> counts saturate at 2^31-1.
     *
     * @param fault which
     * @param uptimeMillis now
     */
    void raise(Fault fault, long uptimeMillis) {
        if (momentaryBits == 0 && faultTicks < Integer.MAX_VALUE) {
            faultTicks++;
        }
        momentaryBits |= fault.bit();
        note(fault, uptimeMillis, (previousBits & fault.bit()) == 0);
    }

    /**
     * Says which standing faults stand now; those that did not before are noted and announced.
     *
     * @param mask the faults that are judged here, a bit each
     * @param bits those of them that stand
     * @param uptimeMillis now
     */
    void stand(int mask, int bits, long uptimeMillis) {
        int appeared = bits & ~standingBits;
        standingBits = (standingBits & ~mask) | bits;
        if (appeared == 0) {
            return;
        }
        for (Fault fault : FAULTS) {
            if ((appeared & fault.bit()) != 0) {
                note(fault, uptimeMillis, true);
            }
        }
    }

    private void note(Fault fault, long uptimeMillis, boolean announce) {
        int index = fault.ordinal();
        if (counts[index] == 0) {
            firstUptimeMillis[index] = uptimeMillis;
        }
        lastUptimeMillis[index] = uptimeMillis;
        if (counts[index] < Integer.MAX_VALUE) {
            counts[index]++;
        }
        if (announce) {
            events.onEvent(Event.FAULT_RAISED, uptimeMillis, index);
        }
    }

    /**
     * Faults of the last tick.
     *
     * @return a bit each, by {@link Fault#bit()}
     */
    public int momentaryBits() {
        return momentaryBits;
    }

    /**
     * Faults of the last tick and those that stand.
     *
     * @return a bit each, by {@link Fault#bit()}
     */
    public int presentBits() {
        return momentaryBits | standingBits;
    }

    /**
     * Ticks with any momentary fault.
     *
     * @return since power-up
     */
    public int faultTicks() {
        return faultTicks;
    }

    /**
     * How often a fault appeared: ticks for a momentary one, appearances for a standing one.
     *
     * @param fault which
     * @return a count
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
     * When a fault was present last (a standing one: when it appeared last).
     *
     * @param fault which
     * @return uptime in milliseconds; 0 if never
     */
    public long lastUptimeMillis(Fault fault) {
        return lastUptimeMillis[fault.ordinal()];
    }
}
