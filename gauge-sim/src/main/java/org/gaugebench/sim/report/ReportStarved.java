package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/**
 * When the loads asked for more than there was. The true hours left at a moment are the time to the
 * next such step: known at the end of a run without running anything ahead.
 */
final class ReportStarved {
    /** Ends kept: a battery that is switched on and off at empty must not fill the page. */
    private static final int MOST = 500;

    /**
     * A time without enough.
     *
     * @param fromMillis start of the first step in which the loads were not met
     * @param toMillis end of the last one
     */
    record Span(long fromMillis, long toMillis) {}

    private final int tickMillis;
    private final List<Span> spans = new ArrayList<>();
    private boolean was;
    private long fromMillis;

    /**
     * Knows of no step yet.
     *
     * @param tickMillis length of a step
     */
    ReportStarved(int tickMillis) {
        this.tickMillis = tickMillis;
    }

    /** Takes whether the step that ends with this tick was one of them; steps come in order. */
    void add(boolean isStarved, long tick) {
        if (isStarved != was) {
            change(isStarved, (tick - 1) * tickMillis);
        }
    }

    private void change(boolean isStarved, long millis) {
        if (isStarved) {
            fromMillis = millis;
        } else if (spans.size() < MOST) {
            spans.add(new Span(fromMillis, millis));
        }
        was = isStarved;
    }

    /** Ends the run, and a span under way with it. */
    void close(long ticks) {
        add(false, ticks + 1);
    }

    /** All of them, in order of time; complete after {@link #close}. */
    List<Span> spans() {
        return List.copyOf(spans);
    }
}
