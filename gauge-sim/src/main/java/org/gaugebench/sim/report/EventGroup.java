package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.judge.RecordedEvent;

/**
 * Like events in a row, told once: a full battery at its limit would else fill the page.
 *
 * @param first of them
 * @param last of them
 * @param count how many
 */
record EventGroup(RecordedEvent first, RecordedEvent last, int count) {
    static List<EventGroup> of(List<RecordedEvent> events) {
        List<EventGroup> groups = new ArrayList<>();
        for (RecordedEvent event : events) {
            int at = groups.size() - 1;
            if (at >= 0 && groups.get(at).isLike(event)) {
                EventGroup group = groups.get(at);
                groups.set(at, new EventGroup(group.first, event, group.count + 1));
            } else {
                groups.add(new EventGroup(event, event, 1));
            }
        }
        return groups;
    }

    /** An event with a fault's number is like another only if the fault is the same. */
    private boolean isLike(RecordedEvent event) {
        return event.gauge().equals(first.gauge())
                && event.event() == first.event()
                && (!event.event().unit().equals("fault") || event.value() == first.value());
    }
}
