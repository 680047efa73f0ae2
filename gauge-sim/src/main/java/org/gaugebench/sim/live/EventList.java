package org.gaugebench.sim.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.jspecify.annotations.Nullable;

/** The newest of what happened; older lines are dropped, and counted. */
final class EventList implements Observer {
    /** Lines that are kept: more than anybody reads. */
    static final int MOST = 200;

    private final Deque<LiveEvent> events = new ArrayDeque<>();
    private final ControlBoard board;
    private @Nullable Rig rig;
    private long count;

    EventList(ControlBoard board) {
        this.board = board;
    }

    void watch(Rig running) {
        rig = running;
    }

    /** All that happened, those that are not kept any more included. */
    long count() {
        return count;
    }

    List<LiveEvent> events() {
        return List.copyOf(events);
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        Rig running = rig;
        add(running == null ? 0 : running.timeMillis(), lane.name(), event, value, "");
    }

    @Override
    public void onChange(Rig running, Change change) {
        add(running.timeMillis(), "", null, change.value(), board.keyOf(change));
        board.took(change);
    }

    private void add(long millis, String who, @Nullable Event event, long value, String what) {
        count++;
        events.addLast(new LiveEvent(count, millis, who, event, value, what));
        if (events.size() > MOST) {
            events.removeFirst();
        }
    }
}
