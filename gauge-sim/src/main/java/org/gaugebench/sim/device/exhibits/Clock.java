package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** What the gauge takes for the time between two samples. */
interface Clock {
    /**
     * Milliseconds between two readings of the 32-bit counter.
     *
     * @param clockMillis the reading now
     * @param lastMillis the reading before
     */
    long elapsedMillis(int clockMillis, int lastMillis);

    /** Modulo 2^32; a clock that went backwards stands for no time. */
    static long exactMillis(int clockMillis, int lastMillis) {
        return Math.max(0, clockMillis - lastMillis);
    }

    /** The clock of a set of mistakes. */
    static Clock of(Set<Mistake> mistakes, int nominalTickMillis) {
        if (mistakes.contains(Mistake.ASSUMED_TICK)) {
            return (clock, last) -> nominalTickMillis;
        }
        if (mistakes.contains(Mistake.MILLISECOND_WRAP)) {
            return (clock, last) -> Integer.toUnsignedLong(clock) - Integer.toUnsignedLong(last);
        }
        return Clock::exactMillis;
    }
}
