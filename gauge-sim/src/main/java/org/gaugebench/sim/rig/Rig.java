package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;

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
    private final Circuit circuit;
    private final Outlook outlook;
    private final List<Lane> lanes = new ArrayList<>();
    private final int tickMillis;
    private long[] stops = {};
    private long timeMillis;
    private long ticks;
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
        this.scenario = scenario;
        this.observer = observer;
        this.tickMillis = (int) scenario.tickMillis();
        SeedTree seeds = new SeedTree(seed);
        circuit = new Circuit(scenario, seeds);
        outlook = new Outlook(scenario, circuit);
        for (GaugeSpec gauge : scenario.gauges()) {
            lanes.add(new Lane(gauge, scenario.sensor(), tickMillis, seeds, observer));
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
        observer.onStart(this);
        skipStops();
        long nextMinuteMillis = MINUTE_MILLIS;
        while (timeMillis < scenario.durationMillis()) {
            runTicks(nextHalt(nextMinuteMillis));
            boolean atMinute = timeMillis >= nextMinuteMillis;
            boolean atEnd = timeMillis >= scenario.durationMillis();
            if ((atMinute || atEnd) && observer.wantsDigest()) {
                for (Lane lane : lanes) {
                    lane.foldDigest();
                }
            }
            if (atMinute || atEnd || atStop()) {
                observer.onMoment(this);
            }
            while (nextMinuteMillis <= timeMillis) {
                nextMinuteMillis += MINUTE_MILLIS;
            }
            skipStops();
            applyChanges();
        }
    }

    /**
     * Changes of time 0 come before the first sample, except what is told to a gauge: a gauge can
     * be told nothing before it has power.
     */
    private void begin() {
        List<Change> changes = scenario.changes();
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

    private long nextHalt(long nextMinuteMillis) {
        long halt = Math.min(nextMinuteMillis, scenario.durationMillis());
        if (nextStop < stops.length) {
            halt = Math.min(halt, stops[nextStop]);
        }
        if (nextChange < scenario.changes().size()) {
            halt = Math.min(halt, scenario.changes().get(nextChange).atMillis());
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
        boolean everyTick = observer.wantsTicks();
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
                observer.onTick(this);
            }
        }
    }

    private void applyChanges() {
        List<Change> changes = scenario.changes();
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

    /** What is really so. */
    public Truth truth() {
        return circuit;
    }

    /** What is really left as things stand; worked out when asked. */
    public Outlook outlook() {
        outlook.setNextChange(nextChange);
        return outlook;
    }

    /** The gauges, in the scenario's order. */
    public List<Lane> lanes() {
        return lanes;
    }

    /** Simulated time. */
    public long timeMillis() {
        return timeMillis;
    }

    /** Ticks so far. */
    public long ticks() {
        return ticks;
    }

    /** The run's digest: the gauges' digests in order, mixed. */
    public long digest() {
        long digest = 0;
        for (Lane lane : lanes) {
            digest = SplitMix64.mix(digest ^ lane.digest());
        }
        return digest;
    }
}
