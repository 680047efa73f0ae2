package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.scenario.Change;

/** Looks on while a rig runs; must not change it. */
public interface Observer {
    /** An observer that looks away. */
    Observer NONE = new Observer() {};

    /**
     * The run is about to begin: time 0, every gauge started.
     *
     * @param rig the rig
     */
    default void onStart(Rig rig) {}

    /**
     * A whole minute has passed, or a moment asked for by {@link Rig#stopAt}.
     *
     * @param rig the rig, standing at that moment
     */
    default void onMoment(Rig rig) {}

    /**
     * After every tick; only called of the one that {@link #forTicks()} names.
     *
     * @param rig the rig
     */
    default void onTick(Rig rig) {}

    /**
     * Whose {@link #onTick} is called: this observer's, that of others behind it, or nobody's.
     * Asked once, as the run begins: to pass each tick on from one to the next costs as much as to
     * look.
     */
    default Observer forTicks() {
        return NONE;
    }

    /**
     * Whether the run's digest is wanted. Without it the registers are not folded at every whole
     * minute, which costs more than a tick; nothing else of the run changes.
     */
    default boolean wantsDigest() {
        return true;
    }

    /**
     * Whether a program in a gauge's place is asked for the digest of its ticks, which costs it a
     * fold in each of them.
     */
    default boolean wantsTickDigest() {
        return false;
    }

    /**
     * A change of the timeline takes effect now; nothing has been done about it yet. Those of time
     * 0 come before {@link #onStart}.
     *
     * @param rig the rig
     * @param change what changes
     */
    default void onChange(Rig rig, Change change) {}

    /**
     * A gauge announced something, in the middle of a tick.
     *
     * @param lane whose gauge
     * @param event what
     * @param value the event's figure
     */
    default void onEvent(Lane lane, Event event, long value) {}

    /**
     * A gauge answered a command.
     *
     * @param lane whose gauge
     * @param command what it was asked
     * @param outcome its one word
     */
    default void onAnswer(Lane lane, Command command, CommandOutcome outcome) {}

    /**
     * A judge that looks on found a claim of the scenario failing at this moment.
     *
     * @param rig the rig, standing at that moment
     */
    default void onFailure(Rig rig) {}

    /**
     * A gauge is about to be used; an observer that writes down what goes into it puts itself in
     * front, and hands every call on unchanged.
     *
     * @param lane whose gauge
     * @param device the gauge
     * @return what is used in its place
     */
    default GaugeDevice watch(Lane lane, GaugeDevice device) {
        return device;
    }

    /**
     * The same for a gauge's memory.
     *
     * @param lane whose memory
     * @param store the memory
     * @return what is used in its place
     */
    default StateStore watch(Lane lane, StateStore store) {
        return store;
    }
}
