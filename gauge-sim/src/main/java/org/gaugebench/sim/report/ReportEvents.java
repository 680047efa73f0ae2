package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RunResult;

/** The events of a report: numbered lines of its table, and the moments marked on its strips. */
final class ReportEvents {
    /** Lines of the table, at most. */
    static final int MOST_LINES = 400;

    /** Moments marked for one line, at most: a count held at its limit comes each day. */
    private static final int MOST_MARKED = 60;

    /**
     * A line of the table: like events in a row.
     *
     * @param number from 1
     * @param group of them
     * @param marked when, each; thinned out where they are many
     */
    record Entry(int number, EventGroup group, List<Long> marked) {}

    private ReportEvents() {}

    /** The first of them, as many as a table may have. */
    static List<Entry> of(RunResult result) {
        List<Entry> entries = new ArrayList<>();
        int at = 0;
        for (EventGroup group : EventGroup.of(result.events())) {
            if (entries.size() == MOST_LINES) {
                break;
            }
            List<RecordedEvent> members = result.events().subList(at, at + group.count());
            at += group.count();
            List<Long> moments = members.stream().map(RecordedEvent::atMillis).distinct().toList();
            entries.add(new Entry(entries.size() + 1, group, thinned(moments)));
        }
        return entries;
    }

    private static List<Long> thinned(List<Long> moments) {
        List<Long> few = new ArrayList<>();
        int size = Math.min(MOST_MARKED, moments.size());
        for (int i = 0; i < size; i++) {
            few.add(moments.get((int) ((long) i * (moments.size() - 1) / Math.max(1, size - 1))));
        }
        return few;
    }

    /** How many events of a run have no line. */
    static long leftOut(RunResult result, List<Entry> entries) {
        long told = entries.stream().mapToLong(entry -> entry.group().count()).sum();
        return result.events().size() - told + result.eventsDropped();
    }
}
