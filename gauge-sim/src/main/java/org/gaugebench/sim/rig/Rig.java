package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.frontend.FrontEnd;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * One truth, any number of gauges, and the timeline between them.
 *
 * <p>A change of the timeline takes effect at the first tick boundary at or after its time. The rig
 * stands still for its observer at every whole simulated minute and at the moments asked for; a
 * moment that no tick boundary meets is met by the next one.
 */
public final class Rig {
    private static final long MINUTE_MILLIS = 60_000;

    private final Scenario scenario;
    private final Observer observer;
    private Observer forTicks = Observer.NONE;
    private final Circuit circuit;
    private final Outlook outlook;
    private final List<Lane> lanes = new ArrayList<>();
    private final int tickMillis;
    private final LookBack lookBack = new LookBack();
    private long[] stops = {};
    private List<Change> changes;
    private long timeMillis;
    private long ticks;
    private long nextMinuteMillis = MINUTE_MILLIS;
    private long foldedMillis;
    private int nextChange;
    private int nextStop;

    /**
     * Builds truth and gauges.
     *
     * @param scenario a checked scenario
     * @param seed of every random stream; the scenario's own unless the user says otherwise
     * @param observer looks on
     */
    public Rig(Scenario scenario, long seed, Observer observer) {
        this(scenario, seed, observer, null);
    }

    /**
     * Builds truth and gauges, with a program in the place of the first gauge of kind core. Whoever
     * gives one calls {@link #release()} whatever happens.
     *
     * @param program how it is started; null for none
     */
    public Rig(Scenario scenario, long seed, Observer observer, @Nullable PipeCommand program) {
        this.scenario = scenario;
        this.observer = observer;
        this.changes = scenario.changes();
        this.tickMillis = (int) scenario.tickMillis();
        SeedTree seeds = new SeedTree(seed);
        circuit = new Circuit(scenario, seeds);
        outlook = new Outlook(scenario, circuit);
        PipeCommand left = program;
        for (GaugeSpec gauge : scenario.gauges()) {
            boolean takes = gauge.kind() == GaugeSpec.Kind.CORE;
            PipeCommand own = takes ? left : null;
            left = takes ? null : left;
            FrontEnd frontEnd = new FrontEnd(scenario.sensor(), seeds, gauge.name());
            lanes.add(new Lane(gauge, frontEnd, tickMillis, seeds, observer, lookBack, own));
        }
        wireLanes();
    }

    /**
     * Asks the rig to stand still for its observer at these moments too.
     *
     * @param millis from the start; those outside the run are never met
     */
    public void stopAt(long[] millis) {
        stops = millis.clone();
        Arrays.sort(stops);
    }

    /** Runs from the start to the end. */
    public void run() {
        begin();
        advanceTo(scenario.durationMillis());
        applyChanges();
    }

    /** Brings every gauge to its first sample; to be called once, before {@link #advanceTo}. */
    public void begin() {
        applyFirstChanges();
        observer.onStart(this);
        forTicks = observer.forTicks();
        skipStops();
    }

    /**
     * Runs on to a moment, and no further than the scenario's end. Where it is cut into such pieces
     * changes nothing of the run. A change that is due at the moment itself waits for the next
     * piece, so that changes of one moment stay together, however late one of them is appended.
     *
     * @param millis from the start; the first tick boundary at or after it is where the rig stands
     */
    public void advanceTo(long millis) {
        long last = Math.min(millis, scenario.durationMillis());
        while (timeMillis < last) {
            applyChanges();
            runTicks(nextHalt(last));
            boolean atMinute = timeMillis >= nextMinuteMillis;
            boolean atEnd = timeMillis >= scenario.durationMillis();
            if ((atMinute || atEnd) && observer.wantsDigest()) {
                for (Lane lane : lanes) {
                    lane.foldDigest();
                }
                foldedMillis = timeMillis;
            }
            if (atMinute || atEnd || atStop()) {
                observer.onMoment(this);
            }
            while (nextMinuteMillis <= timeMillis) {
                nextMinuteMillis += MINUTE_MILLIS;
            }
            skipStops();
        }
    }

    /**
     * Adds a change to the rest of the run, as if the scenario had it; it comes after those of the
     * same time.
     *
     * @param change not earlier than now, and after the start: what is so at time 0 is the
     *     scenario's
     * @throws IllegalArgumentException if it is too early
     */
    public void append(Change change) {
        if (change.atMillis() < timeMillis || change.atMillis() <= 0) {
            throw new IllegalArgumentException("the run is beyond " + change.atMillis() + " ms");
        }
        List<Change> longer = new ArrayList<>(changes);
        int place = nextChange;
        while (place < longer.size() && longer.get(place).atMillis() <= change.atMillis()) {
            place++;
        }
        longer.add(place, change);
        changes = longer;
        outlook.forget();
    }

    /**
     * Changes of time 0 come before the first sample, except what is told to a gauge: a gauge can
     * be told nothing before it has power.
     */
    private void applyFirstChanges() {
        int first = 0;
        while (first < changes.size() && changes.get(first).atMillis() <= 0) {
            if (!changes.get(first).target().isToldToGauge()) {
                apply(changes.get(first));
            }
            first++;
        }
        for (Lane lane : lanes) {
            lane.start(circuit);
        }
        for (Change change : changes.subList(0, first)) {
            if (change.target().isToldToGauge()) {
                apply(change);
            }
        }
        lanes.forEach(Lane::changeSettings);
        nextChange = first;
    }

    private long nextHalt(long lastMillis) {
        long halt = Math.min(nextMinuteMillis, lastMillis);
        if (nextStop < stops.length) {
            halt = Math.min(halt, stops[nextStop]);
        }
        if (nextChange < changes.size()) {
            halt = Math.min(halt, changes.get(nextChange).atMillis());
        }
        return halt;
    }

    private boolean atStop() {
        return nextStop < stops.length && stops[nextStop] <= timeMillis;
    }

    private void skipStops() {
        while (atStop()) {
            nextStop++;
        }
    }

    /** At most a minute of ticks: short enough to be compiled, long enough to pay. */
    private void runTicks(long haltMillis) {
        Observer looking = forTicks;
        boolean everyTick = looking != Observer.NONE;
        Lane first = lanes.get(0);
        int others = lanes.size();
        while (timeMillis < haltMillis) {
            circuit.step(tickMillis);
            timeMillis += tickMillis;
            ticks++;
            first.tick(circuit);
            for (int i = 1; i < others; i++) {
                lanes.get(i).tick(circuit);
            }
            if (everyTick) {
                looking.onTick(this);
            }
        }
        for (Lane lane : lanes) {
            lane.settle();
        }
    }

    private void applyChanges() {
        while (nextChange < changes.size() && changes.get(nextChange).atMillis() <= timeMillis) {
            apply(changes.get(nextChange));
            nextChange++;
        }
        lanes.forEach(Lane::changeSettings);
    }

    /** Hands a change to the one part that owns its target. */
    private void apply(Change change) {
        observer.onChange(this, change);
        Command command = change.target().command();
        if (change.target() == Change.Target.SETTING) {
            tell(change);
            return;
        }
        // Settings that stand together change together; anything else comes after them.
        lanes.forEach(Lane::changeSettings);
        if (command != null) {
            lane(change.name()).command(command, change.value());
            return;
        }
        switch (change.target()) {
            case SENSOR_OFFSET, SENSOR_TRAIT, SENSOR_SAMPLES -> {
                for (Lane lane : lanes) {
                    lane.apply(change, circuit);
                }
            }
            case GAUGE_POWER,
                    GAUGE_OFF_TIME,
                    GAUGE_CUT,
                    CLOCK_ERROR,
                    CLOCK_JITTER,
                    CLOCK_JUMP,
                    CLOCK_SWITCH ->
                    lane(change.name()).apply(change, circuit);
            case WIRING -> {
                circuit.apply(change);
                wireLanes();
            }
            default -> circuit.apply(change);
        }
    }

    private void tell(Change change) {
        for (Lane lane : lanes) {
            if (!change.name().startsWith(lane.name() + ".")) {
                continue;
            }
            for (Setting setting : Setting.values()) {
                if (change.name().equals(lane.name() + "." + setting.key())) {
                    lane.prepare(setting, change.value());
                }
            }
        }
    }

    private Lane lane(String name) {
        for (Lane lane : lanes) {
            if (lane.name().equals(name)) {
                return lane;
            }
        }
        throw new IllegalArgumentException("no gauge is called " + name);
    }

    private void wireLanes() {
        for (Lane lane : lanes) {
            lane.setWiring(circuit.wiring());
        }
    }

    /** What runs. */
    public Scenario scenario() {
        return scenario;
    }

    /**
     * What is really so; while a gauge tells of a tick that is past ({@link #looksBack()}), what
     * was so then.
     */
    public Truth truth() {
        PastTruth past = lookBack.moment();
        return past == null ? circuit : past;
    }

    /** Whether a gauge is telling of a tick that others have left behind already. */
    public boolean looksBack() {
        return lookBack.moment() != null;
    }

    /**
     * Tells programs in the place of gauges that the run is over; they have to end as they should.
     */
    public void end() {
        for (Lane lane : lanes) {
            PipeProgram it = lane.program();
            if (it != null) {
                it.end();
            }
        }
    }

    /** Leaves no program running, however the run went. */
    public void release() {
        for (Lane lane : lanes) {
            PipeProgram it = lane.program();
            if (it != null) {
                it.close();
            }
        }
    }

    /** The same, for those who ask what each load and charger carries. */
    public Circuit plant() {
        return circuit;
    }

    /** What is really left as things stand; worked out when asked. */
    public Outlook outlook() {
        outlook.setAhead(changes.subList(nextChange, changes.size()));
        return outlook;
    }

    /** The gauges, in the scenario's order. */
    public List<Lane> lanes() {
        return lanes;
    }

    /** Simulated time; that of the tick that is told of while the rig looks back. */
    public long timeMillis() {
        PastTruth past = lookBack.moment();
        return past == null ? timeMillis : past.timeMillis();
    }

    /** Ticks so far. */
    public long ticks() {
        return ticks;
    }

    /** The next change that has not been carried out, or the scenario's end; milliseconds. */
    public long nextChangeMillis() {
        return nextChange < changes.size()
                ? changes.get(nextChange).atMillis()
                : scenario.durationMillis();
    }

    /** The run's digest: the gauges' digests in order, mixed. */
    public long digest() {
        long digest = 0;
        for (Lane lane : lanes) {
            digest = SplitMix64.mix(digest ^ lane.digest());
        }
        return digest;
    }

    /** The digest of a run that ends here: an end is folded even where no minute is full. */
    public long digestIfEndedNow() {
        long digest = 0;
        for (Lane lane : lanes) {
            long ended = foldedMillis == timeMillis ? lane.digest() : lane.digestIfFolded();
            digest = SplitMix64.mix(digest ^ ended);
        }
        return digest;
    }
}
