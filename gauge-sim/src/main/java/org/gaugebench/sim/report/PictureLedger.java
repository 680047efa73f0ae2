package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RunResult;
import org.jspecify.annotations.Nullable;

/**
 * The events of a picture: numbered lines to stand under it, and the moments to be marked with
 * those numbers. The first power-up and what was declared at it are left out: every run begins so.
 */
final class PictureLedger {
    /** Most lines: a picture is not a log. */
    static final int MOST_LINES = 8;

    private static final Set<Event> SMALL =
            Set.of(
                    Event.POWERED_UP,
                    Event.HELD_AT_LIMIT,
                    Event.HELD_AT_EMPTY,
                    Event.FULL_RULE_ARMED);

    /**
     * A line of the ledger: like events, one after the other.
     *
     * @param words what happened
     * @param moments when, each
     */
    record Line(String words, List<Long> moments) {}

    private final List<Line> lines = new ArrayList<>();
    private final int leftOut;

    PictureLedger(RunResult result) {
        List<RecordedEvent> events =
                result.events().stream().filter(it -> !isBeginning(it)).toList();
        List<List<RecordedEvent>> groups = grouped(events);
        if (groups.size() > MOST_LINES) {
            groups = grouped(events.stream().filter(it -> !SMALL.contains(it.event())).toList());
        }
        int told = 0;
        for (List<RecordedEvent> group : groups.subList(0, Math.min(MOST_LINES, groups.size()))) {
            lines.add(new Line(words(group), group.stream().map(RecordedEvent::atMillis).toList()));
            told += group.size();
        }
        leftOut = (int) (events.size() - told + result.eventsDropped());
    }

    private static boolean isBeginning(RecordedEvent event) {
        return event.atMillis() == 0
                && (event.event() == Event.POWERED_UP || event.event() == Event.DECLARED);
    }

    /** Like events stand together wherever no other kind of the same gauge comes between. */
    private static List<List<RecordedEvent>> grouped(List<RecordedEvent> events) {
        List<List<RecordedEvent>> groups = new ArrayList<>();
        for (RecordedEvent event : events) {
            List<RecordedEvent> last = lastOf(groups, event.gauge());
            if (last != null && isLike(last.get(0), event)) {
                last.add(event);
            } else {
                groups.add(new ArrayList<>(List.of(event)));
            }
        }
        return groups;
    }

    private static @Nullable List<RecordedEvent> lastOf(
            List<List<RecordedEvent>> groups, String gauge) {
        for (int i = groups.size() - 1; i >= 0; i--) {
            if (groups.get(i).get(0).gauge().equals(gauge)) {
                return groups.get(i);
            }
        }
        return null;
    }

    private static boolean isLike(RecordedEvent a, RecordedEvent b) {
        return a.event() == b.event()
                && (a.event() != Event.FAULT_RAISED || a.value() == b.value());
    }

    private static String words(List<RecordedEvent> group) {
        RecordedEvent first = group.get(0);
        String shown =
                first.shownPartsPerMillion() == Readout.NOT_KNOWN
                        ? "not known"
                        : Figures.percent(first.shownPartsPerMillion());
        String again =
                group.size() == 1
                        ? ""
                        : "; %s times until %s"
                                .formatted(
                                        group.size(),
                                        Figures.moment(group.get(group.size() - 1).atMillis()));
        return "%s  %s: %s%s; shown %s, true %s%s"
                .formatted(
                        Figures.moment(first.atMillis()),
                        first.gauge(),
                        first.event().sentence(),
                        EventFigure.of(first),
                        shown,
                        Figures.percent(first.truePartsPerMillion()),
                        again);
    }

    List<Line> lines() {
        return lines;
    }

    /** How many events have no line. */
    int leftOut() {
        return leftOut;
    }
}
