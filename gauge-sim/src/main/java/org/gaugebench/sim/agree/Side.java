package org.gaugebench.sim.agree;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeDevice;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * One run of a scenario beside another one: the core or a program in the place of the first gauge
 * of kind core, with marks of all that it did.
 */
final class Side implements Observer, AutoCloseable {
    /** Ticks whose inputs are kept. */
    static final int KEPT_TICKS = 20;

    private final String gauge;
    private final boolean folds;
    private final boolean foldsEachLife;
    private final boolean keepsInputs;
    private final Deque<Step> inputs = new ArrayDeque<>();
    private final Rig rig;
    private final Lane lane;
    private int keptTicks;
    private FoldedCore folded = new FoldedCore();
    private @Nullable PipeDevice pipe;
    private @Nullable GaugeDevice seated;
    private @Nullable MarkedStore memory;
    private long toldMark;
    private long offMark;
    private String lastTold = "nothing";

    /**
     * Builds a run.
     *
     * @param program in the gauge's place; null for the core itself
     * @param folds whether digests of all ticks are compared
     * @param foldsEachLife whether a digest begins anew with each life
     * @param keepsInputs whether the last inputs are kept
     */
    Side(
            Scenario scenario,
            long seed,
            @Nullable PipeCommand program,
            boolean folds,
            boolean foldsEachLife,
            boolean keepsInputs) {
        this.folds = folds;
        this.foldsEachLife = foldsEachLife;
        this.keepsInputs = keepsInputs;
        gauge =
                scenario.gauges().stream()
                        .filter(it -> it.kind() == GaugeSpec.Kind.CORE)
                        .map(GaugeSpec::name)
                        .findFirst()
                        .orElseThrow();
        rig = new Rig(scenario, seed, this, program);
        lane = rig.lanes().stream().filter(it -> it.name().equals(gauge)).findFirst().orElseThrow();
    }

    Rig rig() {
        return rig;
    }

    boolean hasPower() {
        return lane.hasPower();
    }

    Registers registers() {
        return lane.inspect();
    }

    /** The gauge of this life; only with power. */
    GaugeDevice device() {
        GaugeDevice it = seated;
        if (it == null) {
            throw new IllegalStateException("no life has begun");
        }
        return it;
    }

    /** Digest of all ticks; only with power. */
    long digest() {
        PipeDevice it = pipe;
        return it == null ? folded.digest() : it.tickDigest();
    }

    /** Digests at each moment at which power was switched off. */
    long offMark() {
        return offMark;
    }

    /** Events with their times and figures, and answers. */
    long toldMark() {
        return toldMark;
    }

    String lastTold() {
        return lastTold;
    }

    long memoryMark() {
        MarkedStore it = memory;
        return it == null ? 0 : it.mark();
    }

    /** What went into the gauge last, oldest first. */
    List<Step> inputs() {
        return new ArrayList<>(inputs);
    }

    @Override
    public boolean wantsTickDigest() {
        return folds;
    }

    @Override
    public void onChange(Rig changing, Change change) {
        boolean goesOff = change.target() == Change.Target.GAUGE_POWER && change.value() == 0;
        if (folds && goesOff && change.name().equals(gauge) && lane.hasPower()) {
            offMark = SplitMix64.mix(offMark ^ digest());
        }
    }

    @Override
    public void onEvent(Lane of, Event event, long value) {
        if (of.name().equals(gauge)) {
            tell(event.ordinal(), rig.timeMillis(), value);
            lastTold = "%s at %s ms, figure %s".formatted(event, rig.timeMillis(), value);
        }
    }

    @Override
    public void onAnswer(Lane of, Command command, CommandOutcome outcome) {
        if (of.name().equals(gauge)) {
            tell(100 + command.ordinal(), rig.timeMillis(), outcome.ordinal());
            lastTold = "%s to %s".formatted(outcome, command);
        }
    }

    private void tell(long what, long atMillis, long value) {
        toldMark = SplitMix64.mix(toldMark ^ (what + 1));
        toldMark = SplitMix64.mix(toldMark ^ atMillis);
        toldMark = SplitMix64.mix(toldMark ^ value);
    }

    @Override
    public StateStore watch(Lane of, StateStore store) {
        if (!of.name().equals(gauge)) {
            return store;
        }
        MarkedStore marked = new MarkedStore(store);
        memory = marked;
        return marked;
    }

    @Override
    public GaugeDevice watch(Lane of, GaugeDevice device) {
        if (!of.name().equals(gauge)) {
            return device;
        }
        seated = device;
        GaugeDevice seen = device;
        if (device instanceof PipeDevice it) {
            pipe = it;
        } else if (folds) {
            folded = foldsEachLife ? new FoldedCore() : folded;
            seen = folded.watch(device);
        }
        return keepsInputs ? new Listened(seen) : seen;
    }

    private void keep(Step step) {
        inputs.addLast(step);
        keptTicks += step instanceof Step.Tick ? 1 : 0;
        while (keptTicks > KEPT_TICKS) {
            keptTicks -= inputs.removeFirst() instanceof Step.Tick ? 1 : 0;
        }
    }

    @Override
    public void close() {
        rig.release();
    }

    /** A gauge whose inputs are kept. */
    private final class Listened implements GaugeDevice {
        private final GaugeDevice device;

        Listened(GaugeDevice device) {
            this.device = device;
        }

        @Override
        public void powerUp(long offMillis, OffTime offTime) {
            keep(new Step.Power(offTime, offMillis));
            device.powerUp(offMillis, offTime);
        }

        @Override
        public void tick(Sample sample) {
            keep(
                    new Step.Tick(
                            sample.shuntCounts,
                            sample.voltageCounts,
                            sample.temperatureMillicelsius,
                            sample.clockMillis));
            device.tick(sample);
        }

        @Override
        public void settle() {
            device.settle();
        }

        @Override
        public boolean holdsTicks() {
            return device.holdsTicks();
        }

        @Override
        public int ticksBehind() {
            return device.ticksBehind();
        }

        @Override
        public CommandOutcome command(Command command, long argument) {
            keep(new Step.Tell(command, argument));
            return device.command(command, argument);
        }

        @Override
        public CommandOutcome changeSettings(GaugeSettings settings) {
            keep(new Step.Change(settings));
            return device.changeSettings(settings);
        }

        @Override
        public void read(Readout readout) {
            device.read(readout);
        }

        @Override
        public void readSample(Readout readout) {
            device.readSample(readout);
        }

        @Override
        public void inspect(Registers registers) {
            device.inspect(registers);
        }
    }
}
