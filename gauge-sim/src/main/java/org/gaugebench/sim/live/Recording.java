package org.gaugebench.sim.live;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Marks;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioWriter;

/** What a scenario says and what was done on top of it, so that both can be written as one file. */
final class Recording {
    private final Scenario base;
    private final long seed;
    private final List<Change> acts = new ArrayList<>();

    Recording(Scenario base, long seed) {
        this.base = base;
        this.seed = seed;
    }

    Scenario base() {
        return base;
    }

    long seed() {
        return seed;
    }

    int acts() {
        return acts.size();
    }

    void clear() {
        acts.clear();
    }

    /**
     * Takes down what was done.
     *
     * @param change not earlier than the one before
     */
    void add(Change change) {
        acts.add(change);
    }

    /**
     * Takes down a figure again that has not taken effect yet: a slider that is drawn says many.
     * Only the last act can be replaced, so that the order of different acts stays.
     */
    boolean replaceLast(Change change) {
        if (acts.isEmpty() || !isMovedBySlider(change.target())) {
            return false;
        }
        int place = acts.size() - 1;
        Change last = acts.get(place);
        boolean same =
                last.atMillis() == change.atMillis()
                        && last.target() == change.target()
                        && last.name().equals(change.name());
        if (same) {
            acts.set(place, change);
        }
        return same;
    }

    private static boolean isMovedBySlider(Change.Target target) {
        return switch (target) {
            case LOAD_AMOUNT,
                    BATTERY_TEMPERATURE,
                    SENSOR_OFFSET,
                    SENSOR_TRAIT,
                    WIRING,
                    CLOCK_ERROR,
                    SETTING ->
                    true;
            default -> false;
        };
    }

    /** What was done at a moment, in order. */
    List<Change> at(long millis) {
        return acts.stream().filter(act -> act.atMillis() == millis).toList();
    }

    /** The scenario's changes and what was done, in order of time; the scenario's come first. */
    List<Change> timeline() {
        List<Change> all = new ArrayList<>(base.changes());
        all.addAll(acts);
        all.sort(Comparator.comparingLong(Change::atMillis));
        return all;
    }

    /** The scenario as if what was done until now had stood in it; of the same length. */
    Scenario whole() {
        return copy(base.about(), base.durationMillis(), timeline());
    }

    /**
     * What happened so far, as a scenario file whose run has the same digest. It expects nothing
     * and is evidence for nothing: claims belong to the file that it comes from.
     *
     * @param nowMillis where the run stands, above 0
     */
    String text(long nowMillis) {
        List<Change> past =
                timeline().stream().filter(change -> change.atMillis() <= nowMillis).toList();
        String about =
                "Recorded live from "
                        + base.name()
                        + " with "
                        + (acts.size() == 1 ? "one act" : acts.size() + " acts")
                        + " of a user. "
                        + base.about();
        return ScenarioWriter.resolved(copy(shortened(about), nowMillis, past));
    }

    private static String shortened(String about) {
        return about.length() > 20_000 ? about.substring(0, 19_999) : about;
    }

    private Scenario copy(String about, long durationMillis, List<Change> changes) {
        return new Scenario(
                base.file(),
                "",
                base.title(),
                about,
                Marks.NONE,
                seed,
                durationMillis,
                base.tickMillis(),
                base.battery(),
                base.sensor(),
                base.gauges(),
                base.chargers(),
                base.loads(),
                base.wiring(),
                changes,
                List.of());
    }
}
