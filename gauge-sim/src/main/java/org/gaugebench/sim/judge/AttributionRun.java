package org.gaugebench.sim.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.rig.Twin;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;

/**
 * Runs a scenario once more with twins beside its main gauge, each with one more cause of error
 * taken away, and splits the error at some moments: the part of a cause is the error of the twin
 * before it was taken away less that of the twin after. So the parts add up exactly.
 */
public final class AttributionRun implements Observer {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    private final Scenario scenario;
    private final long seed;
    private final long[] moments;
    private final List<Twin> twins = new ArrayList<>();
    private final List<Attribution.Split> splits = new ArrayList<>();

    private AttributionRun(Scenario scenario, long seed, long[] moments) {
        this.scenario = scenario;
        this.seed = seed;
        this.moments = moments;
    }

    /** Ends the run: what comes after the last moment is not asked for. */
    private static final class Reached extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Reached() {
            super("reached", null, false, false);
        }
    }

    /** Whether a scenario's main gauge can be split: twins are cores. */
    public static boolean fits(Scenario scenario) {
        return scenario.gauges().get(0).kind() == GaugeSpec.Kind.CORE;
    }

    /**
     * Splits the error at the end of a run and wherever an expectation failed.
     *
     * @param result what came of it; its main gauge a core
     */
    public static Attribution of(RunResult result) {
        return of(result.scenario(), result.seed(), moments(result));
    }

    /** Those moments: the end, and where an expectation failed. */
    public static long[] moments(RunResult result) {
        List<Long> moments = new ArrayList<>();
        moments.add(result.simulatedMillis());
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood() && each.atMillis() >= 0) {
                moments.add(each.atMillis());
            }
        }
        return moments.stream().mapToLong(Long::longValue).toArray();
    }

    /**
     * Splits the error at some moments.
     *
     * @param scenario whose main gauge is a core
     * @param seed of every random stream
     * @param moments from the start, at least one, none after the end; each is met by the first
     *     tick at or after it
     * @throws IllegalArgumentException if the main gauge is no core
     */
    public static Attribution of(Scenario scenario, long seed, long... moments) {
        if (!fits(scenario)) {
            throw new IllegalArgumentException("twins are cores, the main gauge is not");
        }
        long[] sorted = Arrays.stream(moments).sorted().distinct().toArray();
        AttributionRun run = new AttributionRun(scenario, seed, sorted);
        Rig rig = new Rig(scenario, seed, run);
        rig.stopAt(sorted);
        try {
            rig.run();
        } catch (Reached e) {
            // as meant
        }
        return new Attribution(scenario.gauges().get(0).name(), List.copyOf(run.splits));
    }

    /** Twins are there from the first thing that happens on. */
    private void build(Rig rig) {
        if (!twins.isEmpty()) {
            return;
        }
        for (Cause cause : Cause.values()) {
            if (cause != Cause.CLAMP && cause != Cause.ARITHMETIC) {
                twins.add(new Twin(scenario, seed, cause, rig.truth()));
            }
        }
    }

    @Override
    public void onChange(Rig rig, Change change) {
        build(rig);
        // What is told at time 0 is told to a gauge that has power.
        if (change.target().isToldToGauge()) {
            twins.forEach(Twin::start);
        }
        for (Twin twin : twins) {
            twin.apply(change);
        }
    }

    @Override
    public void onStart(Rig rig) {
        build(rig);
        twins.forEach(Twin::start);
        onMoment(rig);
    }

    @Override
    public boolean wantsTicks() {
        return true;
    }

    @Override
    public void onTick(Rig rig) {
        for (Twin twin : twins) {
            twin.tick();
        }
    }

    @Override
    public void onMoment(Rig rig) {
        boolean due = false;
        while (splits.size() < moments.length && moments[splits.size()] <= rig.timeMillis()) {
            splits.add(split(rig));
            due = true;
        }
        if (due && splits.size() == moments.length) {
            throw new Reached();
        }
    }

    private Attribution.Split split(Rig rig) {
        twins.forEach(Twin::settle);
        Lane lane = rig.lanes().get(0);
        boolean known =
                lane.hasPower() && lane.read().stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
        long truth = Twin.trueNanocoulombs(rig.truth());
        long shown = known ? lane.inspect().get(Register.CHARGE_NANOCOULOMBS) : 0;
        return new Attribution.Split(
                rig.timeMillis(),
                known,
                shown,
                truth,
                known ? lane.inspect().get(Register.CAPACITY_NANOCOULOMBS) : 0,
                StrictMath.round(rig.truth().capacityAmpHours() * NANOCOULOMBS_PER_AMP_HOUR),
                known ? parts(shown, truth) : Map.of());
    }

    private Map<Cause, Long> parts(long shown, long truth) {
        Map<Cause, Long> parts = new EnumMap<>(Cause.class);
        // Limits need no twin of their own: what they cut off is counted apart.
        long limited = twins.get(0).limitedNanocoulombs();
        parts.put(Cause.RULES, shown - limited);
        long before = twins.get(0).unlimitedNanocoulombs();
        parts.put(Cause.CLAMP, limited - before);
        for (Twin twin : twins.subList(1, twins.size())) {
            long after = twin.unlimitedNanocoulombs();
            parts.put(twin.last(), before - after);
            before = after;
        }
        parts.put(Cause.ARITHMETIC, before - truth);
        return Collections.unmodifiableMap(parts);
    }
}
