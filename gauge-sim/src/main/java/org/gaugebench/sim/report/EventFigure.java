package org.gaugebench.sim.report;

import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RecordedEvent;

/** An event's one figure as people read it. */
final class EventFigure {
    private EventFigure() {}

    /** The figure with its unit in brackets, after a space; empty where it tells nothing. */
    static String of(RecordedEvent event) {
        long value = event.value();
        return switch (event.event()) {
            case FAULT_RAISED -> " (" + fault(value) + ")";
            case SET_TO_FULL -> " (a step of " + ampHours(value) + ")";
            case FULL_RULE_ARMED -> " (after " + ampHours(value) + " out)";
            default -> "";
        };
    }

    private static String ampHours(long nanocoulombs) {
        return Figures.decimal(nanocoulombs / 3_600_000, 6, 2) + " Ah";
    }

    private static String fault(long number) {
        Fault[] faults = Fault.values();
        return number >= 0 && number < faults.length
                ? faults[(int) number].sentence()
                : "fault " + number;
    }
}
