package org.gaugebench.sim.judge;

import org.gaugebench.core.port.Event;

/**
 * Something a gauge announced, with the truth of that moment.
 *
 * @param gauge whose
 * @param event what
 * @param atMillis when, from the start of the run
 * @param value the event's figure
 * @param shownPartsPerMillion state of charge shown just after it, or -1 when unknown
 * @param truePartsPerMillion true state of charge
 */
public record RecordedEvent(
        String gauge,
        Event event,
        long atMillis,
        long value,
        long shownPartsPerMillion,
        long truePartsPerMillion) {

    /**
     * Whether an event's figure is the step by which the count was set, by a capacity that stayed.
     */
    public static boolean isStep(Event event) {
        return event == Event.SET_TO_FULL
                || event == Event.SET_TO_EMPTY
                || event == Event.CORRECTED_BY_REST;
    }
}
