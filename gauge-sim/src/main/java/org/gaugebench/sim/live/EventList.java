package org.gaugebench.sim.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.StepText;
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
        add(running == null ? 0 : running.timeMillis(), lane.name(), event, value, null);
    }

    @Override
    public void onChange(Rig running, Change change) {
        String who = change.target().isOfOneGauge() ? change.name() : "";
        String name = change.target().isOfOneGauge() ? "" : change.name();
        if (change.target() == Change.Target.SETTING) {
            int dot = change.name().lastIndexOf('.');
            who = change.name().substring(0, dot);
            name = change.name().substring(dot + 1);
        }
        Control control = board.controlOf(change);
        String text =
                control == null || control.isSwitch()
                        ? StepText.value(running.scenario(), change)
                        : ControlText.of(control, change.value());
        String target = change.target().name().toLowerCase(Locale.ROOT).replace('_', '-');
        LiveEvent.What what =
                new LiveEvent.What(target, control == null ? "" : control.key(), name, text);
        add(running.timeMillis(), who, null, change.value(), what);
        board.took(change);
    }

    private void add(
            long millis,
            String who,
            @Nullable Event event,
            long value,
            LiveEvent.@Nullable What what) {
        count++;
        events.addLast(new LiveEvent(count, millis, who, event, value, what));
        if (events.size() > MOST) {
            events.removeFirst();
        }
    }
}
