package org.gaugebench.sim.live;

import org.gaugebench.core.port.Event;
import org.jspecify.annotations.Nullable;

/**
 * One line of the list of what happened.
 *
 * @param number counts from 1 within a run
 * @param millis when
 * @param who name of the gauge that announced it, or that was told; empty for what is of no gauge
 * @param event what a gauge announced; null for a change
 * @param value the event's figure, or the change's new value
 * @param what was changed; null for an event
 */
record LiveEvent(
        long number,
        long millis,
        String who,
        @Nullable Event event,
        long value,
        @Nullable What what) {

    /**
     * What was changed, and to what.
     *
     * @param target the part that owns it, such as "zero-adjustment"
     * @param control key of the control on the page; empty where no control moves it
     * @param name of the part within the target, such as "lug-resistance" or "hold"
     * @param text the new value with its unit, in the unit of its control; else as scenario files
     *     write it; empty for a command without a figure
     */
    record What(String target, String control, String name, String text) {}
}
