package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Registers;

/** Sees every tick of a replay. */
public interface ReplayListener {
    /** Looks at nothing. */
    ReplayListener NONE = (millis, registers) -> {};

    /**
     * After a tick.
     *
     * @param millis time from the first row
     * @param registers everything inside the gauge; valid until the call returns
     */
    void afterTick(long millis, Registers registers);
}
