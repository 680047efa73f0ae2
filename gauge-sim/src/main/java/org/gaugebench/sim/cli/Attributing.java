package org.gaugebench.sim.cli;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * Splits errors by cause where that is asked for: one more run for each scenario, whoever wants the
 * split. It happens as a part of the run, so it obeys the same limit of time and shows the same
 * progress.
 */
final class Attributing implements ShelfRunner.After {
    private final @Nullable String gauge;
    private final boolean told;
    private final boolean drawn;
    private Observer progress = Observer.NONE;

    /** By identity: two runs may come to the same result. */
    private final Map<RunResult, Attribution> found =
            Collections.synchronizedMap(new IdentityHashMap<>());

    /**
     * Prepares it.
     *
     * @param gauge whose error, or null for the main one
     * @param told whether reports tell of it
     * @param drawn whether a picture shows it over time
     */
    Attributing(@Nullable String gauge, boolean told, boolean drawn) {
        this.gauge = gauge;
        this.told = told;
        this.drawn = drawn;
    }

    boolean isWanted() {
        return told || drawn;
    }

    void setProgress(Observer observer) {
        progress = observer;
    }

    /** Refuses a gauge that cannot be split, before anything runs. */
    String gaugeOf(Scenario scenario) throws InputException {
        GaugeSpec main = scenario.gauges().get(0);
        String name = gauge == null ? main.name() : gauge;
        List<String> cores = AttributionRun.gauges(scenario);
        if (cores.contains(name)) {
            return name;
        }
        String others =
                cores.isEmpty()
                        ? ""
                        : "; --attribution-gauge takes another one, such as " + cores.get(0);
        for (GaugeSpec each : scenario.gauges()) {
            if (each.name().equals(name)) {
                throw new InputException(
                        "--attribution: the %s of %s is of kind %s; expected kind core,"
                                        .formatted(
                                                each.equals(main) ? "main gauge" : "gauge " + name,
                                                scenario.name(),
                                                each.kind().key())
                                + " whose causes can be taken away one by one, such as"
                                + " 'gauge: {kind: core}'"
                                + others);
            }
        }
        String nearest = Nearest.of(name, cores);
        throw new InputException(
                "--attribution-gauge: no gauge of %s is called '%s'%s"
                        .formatted(
                                scenario.name(),
                                name,
                                nearest == null ? others : "; did you mean '" + nearest + "'?"));
    }

    @Override
    public void of(RunResult result, Observer watch) {
        if (!isWanted()) {
            return;
        }
        Scenario scenario = result.scenario();
        String name = gauge == null ? scenario.gauges().get(0).name() : gauge;
        long[] moments = AttributionRun.told(result);
        if (drawn) {
            long[] even = AttributionRun.evenly(scenario, AttributionRun.MOST_MOMENTS);
            long[] steps = AttributionRun.steps(result, name);
            moments = Stream.of(moments, even, steps).flatMapToLong(LongStream::of).toArray();
        }
        found.put(
                result,
                AttributionRun.of(
                        scenario, result.seed(), name, Observers.both(progress, watch), moments));
    }

    /** What a report tells, or null where that is not asked for. */
    @Nullable Attribution told(RunResult result) {
        Attribution all = found.get(result);
        return told && all != null ? all.at(AttributionRun.told(result)) : null;
    }

    /** What a picture shows, or null where that is not asked for. */
    @Nullable Attribution drawn(RunResult result) {
        return drawn ? found.get(result) : null;
    }

    /** A result that has been printed is not needed any more. */
    void forget(RunResult result) {
        found.remove(result);
    }
}
