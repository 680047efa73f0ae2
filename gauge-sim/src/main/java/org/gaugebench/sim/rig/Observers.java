package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.scenario.Change;

/** Several observers as one. */
public final class Observers {
    private Observers() {}

    /** Both look on, the first one first. */
    public static Observer both(Observer first, Observer second) {
        if (first == Observer.NONE) {
            return second;
        }
        if (second == Observer.NONE) {
            return first;
        }
        return new Observer() {
            @Override
            public void onStart(Rig rig) {
                first.onStart(rig);
                second.onStart(rig);
            }

            @Override
            public void onMoment(Rig rig) {
                first.onMoment(rig);
                second.onMoment(rig);
            }

            @Override
            public void onTick(Rig rig) {
                first.onTick(rig);
                second.onTick(rig);
            }

            @Override
            public Observer forTicks() {
                return both(first.forTicks(), second.forTicks());
            }

            @Override
            public void onChange(Rig rig, Change change) {
                first.onChange(rig, change);
                second.onChange(rig, change);
            }

            @Override
            public void onEvent(Lane lane, Event event, long value) {
                first.onEvent(lane, event, value);
                second.onEvent(lane, event, value);
            }

            @Override
            public void onAnswer(Lane lane, Command command, CommandOutcome outcome) {
                first.onAnswer(lane, command, outcome);
                second.onAnswer(lane, command, outcome);
            }

            @Override
            public void onFailure(Rig rig) {
                first.onFailure(rig);
                second.onFailure(rig);
            }

            @Override
            public GaugeDevice watch(Lane lane, GaugeDevice device) {
                return second.watch(lane, first.watch(lane, device));
            }

            @Override
            public StateStore watch(Lane lane, StateStore store) {
                return second.watch(lane, first.watch(lane, store));
            }
        };
    }
}
