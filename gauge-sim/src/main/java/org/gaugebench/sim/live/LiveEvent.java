package org.gaugebench.sim.live;

import org.gaugebench.core.port.Event;
import org.jspecify.annotations.Nullable;

/**
 * One line of the list of what happened.
 *
 * @param number counts from 1 within a run
 * @param millis when
 * @param who a gauge's name; empty for the timeline and for what somebody did
 * @param event what a gauge announced; null for a change
 * @param value the event's figure, or the change's new value
 * @param what address of what was changed; empty for an event
 */
record LiveEvent(
        long number, long millis, String who, @Nullable Event event, long value, String what) {}
