package org.gaugebench.sim.report;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RecordedEvent;
import org.jspecify.annotations.Nullable;

/** An event's one figure as people read it. */
final class EventFigure {
    private EventFigure() {}

    /** The figure with its unit in brackets, after a space; empty where it tells nothing. */
    static String of(RecordedEvent event) {
        long value = event.value();
        return switch (event.event()) {
            case FAULT_RAISED -> " (" + fault(event) + ")";
            case SET_TO_FULL, SET_TO_EMPTY, CORRECTED_BY_REST, SETTINGS_CHANGED, NEW_BATTERY ->
                    " (a step of " + ampHours(value) + ")";
            case FULL_RULE_ARMED -> " (after " + ampHours(value) + " out)";
            case CAPACITY_MEASURED -> " (" + Figures.decimal(value, 3, 2) + " Ah)";
            case EFFICIENCY_MEASURED -> " (" + Figures.percent(value) + ")";
            case EARLY_EMPTY -> " (counted " + Figures.percent(value) + ")";
            case BATTERY_DOUBTFUL -> " (" + Figures.decimal(value, 6, 3) + " V)";
            // The state of charge shown beside the event says it, or the figure is no news.
            case POWERED_UP, RESTORED, DECLARED, HELD_AT_LIMIT, HELD_AT_EMPTY, ADJUSTED -> "";
        };
    }

    private static String ampHours(long nanocoulombs) {
        return Figures.decimal(nanocoulombs / 3_600_000, 6, 2) + " Ah";
    }

    private static String fault(RecordedEvent event) {
        Fault fault = faultOf(event);
        return fault == null ? "fault " + event.value() : fault.sentence();
    }

    /** The fault that an event names; null for an event of another kind or an unknown number. */
    static @Nullable Fault faultOf(RecordedEvent event) {
        Fault[] faults = Fault.values();
        long number = event.value();
        return event.event() == Event.FAULT_RAISED && number >= 0 && number < faults.length
                ? faults[(int) number]
                : null;
    }
}
