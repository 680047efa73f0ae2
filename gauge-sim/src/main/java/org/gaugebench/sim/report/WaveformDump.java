package org.gaugebench.sim.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * Writes a run as a value change dump (IEEE 1364-2005, clause 18, four-state): every tick of truth
 * and gauges, of which only changes take room. Unknown is x: everything of a gauge without power,
 * and figures that a gauge does not know.
 *
 * <p>An event is a wire that is up for the tick in which it was told. What was told between two
 * ticks, in answer to a command, stands at the later one, where its figures stand too.
 *
 * <p>Trouble with the file does not stop the run; {@link #keep} tells it.
 */
public final class WaveformDump implements Observer, AutoCloseable {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;
    private static final Fault[] FAULTS = Fault.values();
    private static final Event[] EVENTS = Event.values();
    private static final List<String> FIGURES =
            List.of(
                    "shunt_counts",
                    "voltage_counts",
                    "temperature_millicelsius",
                    "current_microamps",
                    "voltage_microvolts",
                    "state_of_charge_ppm",
                    "lower_edge_ppm",
                    "upper_edge_ppm",
                    "time_to_empty_minutes",
                    "time_to_empty_state",
                    "rule_state",
                    "rule_reason",
                    "rule_held_minutes",
                    "trust");

    private final FreshFile file;
    private final String origin;
    private final WaveSignals signals = new WaveSignals();
    private final Map<String, Integer> told = new TreeMap<>();
    private final Map<String, Integer> firstEvents = new TreeMap<>();
    private @Nullable IOException trouble;
    private long writtenMillis;
    private long stampedMillis;
    private int next;

    /**
     * Opens a dump.
     *
     * @param place where it is to appear when the run has ended
     * @param version of this program
     * @param seed of the run
     * @throws IOException if the file cannot be written there
     */
    public WaveformDump(Path place, String version, long seed) throws IOException {
        this.file = new FreshFile(place);
        this.origin = "$version " + word(version) + " $end\n$comment seed " + seed + ", scenario ";
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onStart(Rig rig) {
        StringBuilder header = new StringBuilder(origin);
        header.append(word(rig.scenario().name().replaceAll(".*/", ""))).append(" $end\n");
        table(header, "rule_state", RuleState.values());
        table(header, "rule_reason", RuleReason.values());
        table(header, "time_to_empty_state", EstimateState.values());
        table(header, "trust", Trust.values());
        header.append("$timescale 1 ms $end\n$scope module truth $end\n");
        signals.declare(header, "current_microamps", 64);
        signals.declare(header, "voltage_microvolts", 64);
        signals.declare(header, "temperature_millicelsius", 32);
        signals.declare(header, "charge_nanocoulombs", 64);
        signals.declare(header, "state_of_charge_ppm", 32);
        // Gauges lie in a scope of their own: one of them may be called truth.
        header.append("$upscope $end\n$scope module gauges $end\n");
        Set<String> taken = new HashSet<>();
        for (Lane lane : rig.lanes()) {
            String name = lane.name().replaceAll("[^A-Za-z0-9]+", "_");
            // A name may not begin with a figure, and two may differ by a space or a dash only.
            name = Character.isDigit(name.charAt(0)) ? "_" + name : name;
            while (!taken.add(name)) {
                name += "_";
            }
            declare(header, name);
        }
        header.append("$upscope $end\n$enddefinitions $end\n#0\n$dumpvars\n");
        write(header);
        sample(rig);
        write(signals.changes());
        write(new StringBuilder("$end\n"));
    }

    private void declare(StringBuilder header, String gauge) {
        header.append("$scope module ").append(gauge).append(" $end\n");
        signals.declare(header, "powered", 1);
        for (String name : FIGURES) {
            signals.declare(header, name, 32);
        }
        signals.declare(header, "charge_nanocoulombs", 64);
        signals.declare(header, "low_charge_alarm", 1);
        header.append("$scope module faults $end\n");
        for (Fault fault : FAULTS) {
            signals.declare(header, fault.name().toLowerCase(Locale.ROOT), 1);
        }
        header.append("$upscope $end\n$scope module events $end\n");
        for (Event event : EVENTS) {
            signals.declare(header, event.name().toLowerCase(Locale.ROOT), 1);
        }
        header.append("$upscope $end\n$upscope $end\n");
    }

    /** What the figures of a signal stand for. */
    private static void table(StringBuilder header, String signal, Enum<?>[] names) {
        header.append("$comment ").append(signal).append(':');
        for (Enum<?> name : names) {
            header.append(' ').append(name.ordinal()).append('=').append(name.name());
        }
        header.append(" $end\n");
    }

    /** A text that no reader takes for the end of the entry. */
    private static String word(String text) {
        return text.replaceAll("[^ -#%-~]+", "_");
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        told.merge(lane.name(), 1 << event.ordinal(), (had, now) -> had | now);
    }

    @Override
    public void onTick(Rig rig) {
        writtenMillis = rig.timeMillis();
        sample(rig);
        writeChanges();
    }

    private void sample(Rig rig) {
        next = 0;
        Truth truth = rig.truth();
        put(StrictMath.round(truth.meanCurrentAmps() * 1e6));
        put(StrictMath.round(truth.voltageVolts() * 1e6));
        put(StrictMath.round(truth.temperatureCelsius() * 1e3));
        put(StrictMath.round(truth.chargeAmpHours() * NANOCOULOMBS_PER_AMP_HOUR));
        put(StrictMath.round(truth.stateOfCharge() * 1e6));
        for (Lane lane : rig.lanes()) {
            gauge(lane);
        }
    }

    private void gauge(Lane lane) {
        boolean powered = lane.hasPower();
        put(powered ? 1 : 0);
        if (powered) {
            figures(lane);
        } else {
            for (int i = 0; i < FIGURES.size() + 2 + FAULTS.length; i++) {
                put(WaveSignals.UNKNOWN);
            }
        }
        events(lane.name());
    }

    private void figures(Lane lane) {
        Registers registers = lane.inspect();
        // Reading comes second: a program may tell events while it answers.
        Readout readout = lane.read();
        boolean known = readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
        boolean warm = readout.temperatureMillicelsius != Sample.TEMPERATURE_ABSENT;
        EstimateState left = readout.timeToEmptyState;
        boolean timed = left == EstimateState.ESTIMATE || left == EstimateState.MORE_THAN;
        put(registers.get(Register.SHUNT_COUNTS));
        put(registers.get(Register.VOLTAGE_COUNTS));
        put(warm ? readout.temperatureMillicelsius : WaveSignals.UNKNOWN);
        put(readout.currentMicroamps);
        put(readout.voltageMicrovolts);
        put(known ? readout.stateOfChargePartsPerMillion : WaveSignals.UNKNOWN);
        put(readout.bandUnknown ? WaveSignals.UNKNOWN : readout.lowerEdgePartsPerMillion);
        put(readout.bandUnknown ? WaveSignals.UNKNOWN : readout.upperEdgePartsPerMillion);
        put(timed ? readout.timeToEmptyMinutes : WaveSignals.UNKNOWN);
        put(left.ordinal());
        put(readout.ruleState.ordinal());
        put(readout.ruleReason.ordinal());
        put(registers.get(Register.RULE_HELD_MINUTES));
        put(readout.trust.ordinal());
        put(known ? readout.remainingNanocoulombs : WaveSignals.UNKNOWN);
        put(readout.lowCharge ? 1 : 0);
        for (Fault fault : FAULTS) {
            put((readout.faultBits & fault.bit()) == 0 ? 0 : 1);
        }
    }

    private void events(String lane) {
        int first = next;
        Integer bits = told.remove(lane);
        for (int i = 0; i < EVENTS.length; i++) {
            put(bits == null ? 0 : bits >> i & 1);
        }
        firstEvents.put(lane, first);
    }

    private void put(long value) {
        signals.set(next, value);
        next++;
    }

    private void writeChanges() {
        StringBuilder changes = signals.changes();
        if (changes.length() > 0) {
            write(new StringBuilder(16).append('#').append(writtenMillis).append('\n'));
            stampedMillis = writtenMillis;
            write(changes);
        }
    }

    private void write(StringBuilder text) {
        try {
            if (trouble == null) {
                file.writer().append(text);
            }
        } catch (IOException e) {
            trouble = e;
        }
        text.setLength(0);
    }

    /**
     * Moves the finished dump into place. Its last time is the run's end, changed or not.
     *
     * @throws IOException if anything of it could not be written
     */
    public void keep() throws IOException {
        // What the last changes of the timeline brought about: no tick comes after them.
        firstEvents.forEach(
                (lane, first) -> {
                    int bits = told.getOrDefault(lane, 0);
                    for (int i = 0; i < EVENTS.length; i++) {
                        if ((bits >> i & 1) != 0) {
                            signals.set(first + i, 1);
                        }
                    }
                });
        StringBuilder last = signals.changes();
        if (stampedMillis != writtenMillis) {
            last.insert(0, "#" + writtenMillis + "\n");
        }
        write(last);
        if (trouble != null) {
            throw trouble;
        }
        file.keep();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
