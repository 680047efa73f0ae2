package org.gaugebench.sim.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.rig.Twin;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;

/**
 * Runs a scenario once more with twins beside one of its gauges, each with one more cause of error
 * taken away, and splits the error at some moments: the part of a cause is the error of the twin
 * before it was taken away less that of the twin after. So the parts add up exactly.
 */
public final class AttributionRun implements Observer {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /** Moments of a split over time that are enough to draw it. */
    public static final int MOST_MOMENTS = 400;

    /** Sets of the count that get moments of their own. */
    private static final int MOST_STEPS = 100;

    private final Scenario scenario;
    private final GaugeSpec gauge;
    private final long seed;
    private final long[] moments;
    private final List<Twin> twins = new ArrayList<>();
    private final List<Attribution.Split> splits = new ArrayList<>();

    private AttributionRun(Scenario scenario, GaugeSpec gauge, long seed, long[] moments) {
        this.scenario = scenario;
        this.gauge = gauge;
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

    /** The gauges of a scenario that can be split, the main one first: twins are cores. */
    public static List<String> gauges(Scenario scenario) {
        return scenario.gauges().stream()
                .filter(gauge -> gauge.kind() == GaugeSpec.Kind.CORE)
                .map(GaugeSpec::name)
                .toList();
    }

    /** Whether a scenario's main gauge can be split. */
    public static boolean fits(Scenario scenario) {
        return gauges(scenario).contains(scenario.gauges().get(0).name());
    }

    /** The moments that a report tells of: the end, and wherever an expectation failed. */
    public static long[] told(RunResult result) {
        List<Long> moments = new ArrayList<>();
        moments.add(result.simulatedMillis());
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood() && each.atMillis() >= 0) {
                moments.add(each.atMillis());
            }
        }
        return moments.stream().mapToLong(Long::longValue).sorted().distinct().toArray();
    }

    /**
     * The ticks at which a gauge's count was set, each with the one before it: between two moments
     * a picture draws a line, and the error stepped there.
     *
     * @param result what came of the run
     * @param gauge its name
     */
    public static long[] steps(RunResult result, String gauge) {
        return result.events().stream()
                .filter(it -> it.gauge().equals(gauge) && RecordedEvent.isStep(it.event()))
                .limit(MOST_STEPS)
                .flatMapToLong(
                        it ->
                                LongStream.of(
                                        it.atMillis() - result.scenario().tickMillis(),
                                        it.atMillis()))
                .toArray();
    }

    /**
     * Moments spread evenly over a run, the start and the end among them, each a whole tick.
     *
     * @param scenario what runs
     * @param most how many at most, 2 or more; fewer where the run has fewer ticks
     */
    public static long[] evenly(Scenario scenario, int most) {
        long tick = scenario.tickMillis();
        long ticks = scenario.durationMillis() / tick;
        long steps = Math.min(most - 1, ticks);
        long[] moments = new long[(int) steps + 1];
        for (int i = 0; i <= steps; i++) {
            moments[i] = Math.multiplyExact(ticks, i) / Math.max(1, steps) * tick;
        }
        return Arrays.stream(moments).distinct().toArray();
    }

    /**
     * Splits the error of the main gauge at the end of a run and wherever an expectation failed.
     *
     * @param result what came of it; its main gauge a core
     */
    public static Attribution of(RunResult result) {
        return of(result.scenario(), result.seed(), told(result));
    }

    /**
     * Splits the error of the main gauge over time: what a picture or a page draws.
     *
     * @param scenario whose main gauge is a core
     * @param seed of every random stream
     * @return at most {@value #MOST_MOMENTS} splits, evenly spread, in order of time
     */
    public static Attribution overTime(Scenario scenario, long seed) {
        return of(scenario, seed, evenly(scenario, MOST_MOMENTS));
    }

    /**
     * Splits the error of the main gauge at some moments.
     *
     * @param scenario whose main gauge is a core
     * @param seed of every random stream
     * @param moments from the start, at least one, none after the end; each is met by the first
     *     tick at or after it
     * @throws IllegalArgumentException if the main gauge is no core
     */
    public static Attribution of(Scenario scenario, long seed, long... moments) {
        return of(scenario, seed, scenario.gauges().get(0).name(), Observer.NONE, moments);
    }

    /**
     * Splits the error of a gauge at some moments.
     *
     * @param scenario what to run
     * @param seed of every random stream
     * @param gauge one of {@link #gauges}
     * @param guest looks on, and may end the run by what it throws
     * @param moments from the start, at least one, none after the end; each is met by the first
     *     tick at or after it, and each has a split of its own
     * @throws IllegalArgumentException if there is no such core
     */
    public static Attribution of(
            Scenario scenario, long seed, String gauge, Observer guest, long... moments) {
        GaugeSpec spec =
                scenario.gauges().stream()
                        .filter(it -> it.name().equals(gauge))
                        .filter(it -> it.kind() == GaugeSpec.Kind.CORE)
                        .findFirst()
                        .orElseThrow(
                                () -> new IllegalArgumentException("no core is called " + gauge));
        long[] sorted = Arrays.stream(moments).sorted().distinct().toArray();
        AttributionRun run = new AttributionRun(scenario, spec, seed, sorted);
        Rig rig = new Rig(scenario, seed, Observers.both(guest, run));
        rig.stopAt(sorted);
        try {
            rig.run();
        } catch (Reached e) {
            // as meant
        }
        return new Attribution(gauge, List.copyOf(run.splits));
    }

    /** Twins are there from the first thing that happens on. */
    private void build(Rig rig) {
        if (!twins.isEmpty()) {
            return;
        }
        for (Cause cause : Cause.values()) {
            if (cause != Cause.CLAMP && cause != Cause.ARITHMETIC) {
                twins.add(new Twin(scenario, gauge, seed, cause, rig.truth()));
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
    public Observer forTicks() {
        return this;
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
        Lane lane = rig.lanes().get(scenario.gauges().indexOf(gauge));
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
