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

    private final List<Span> spans = new ArrayList<>();
    private boolean was;
    private long fromMillis;
    private long lastMillis;

    /** Takes whether the step that ends now was one of them; steps come in order. */
    void add(boolean isStarved, long nowMillis) {
        if (isStarved != was) {
            if (isStarved) {
                fromMillis = lastMillis;
            } else if (spans.size() < MOST) {
                spans.add(new Span(fromMillis, lastMillis));
            }
            was = isStarved;
        }
        lastMillis = nowMillis;
    }

    /** All of them, in order of time; one under way ends now. */
    List<Span> spans() {
        List<Span> all = new ArrayList<>(spans);
        if (was && all.size() < MOST) {
            all.add(new Span(fromMillis, lastMillis));
        }
        return all;
    }
}
