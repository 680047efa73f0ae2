package org.gaugebench.core.port;

/** Receives what the gauge announces, in the tick in which it happens. */
public interface EventSink {
    /** Drops every event. */
    EventSink NONE = (event, uptimeMillis, value) -> {};

    /**
     * Called once per event.
     *
     * @param event what happened
     * @param uptimeMillis when, in milliseconds since power-up
     * @param value the event's own figure, in the unit that {@link Event#unit()} names
     */
    void onEvent(Event event, long uptimeMillis, long value);
}
