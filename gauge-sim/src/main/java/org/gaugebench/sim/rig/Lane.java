package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.exhibits.ExhibitGauge;
import org.gaugebench.sim.device.exhibits.PlainCounter;
import org.gaugebench.sim.frontend.FrontEnd;
import org.gaugebench.sim.memory.PowerCut;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.MemorySpec;
import org.gaugebench.sim.scenario.SampleMode;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.WiringSpec;
import org.jspecify.annotations.Nullable;

/**
 * One gauge under test with its own front end, memory and supply, fed by the rig's one truth.
 *
 * <p>Without power a gauge takes no sample and shows nothing. When power comes back a core begins
 * as a new object on the old memory; the other kinds carry their count over, as each of them says.
 */
public final class Lane {
    private final GaugeSpec spec;
    private final int tickMillis;
    private final Observer observer;
    private final FrontEnd frontEnd;
    private final Supply supply;
    private final @Nullable LaneMemory memory;
    private final StateStore store;
    private GaugeDevice device;
    private final Sample sample = new Sample();
    private final Readout readout = new Readout();
    private final Readout sampleReadout = new Readout();
    private boolean isBusy;
    private boolean isRead;
    private final Registers registers = new Registers();
    private final Registers blankRegisters = new Registers();
    private GaugeSettings settings;
    private GaugeSettings.@Nullable Builder prepared;
    private boolean everStarted;
    private long digest = Registers.DIGEST_START;

    /**
     * Builds a gauge.
     *
     * @param tickMillis interval at which an exhibit thinks that samples come
     */
    Lane(GaugeSpec spec, SensorSpec sensor, int tickMillis, SeedTree seeds, Observer observer) {
        this(spec, new FrontEnd(sensor, seeds, spec.name()), tickMillis, seeds, observer);
    }

    /** Builds a gauge on a front end of its own making: that of a twin. */
    Lane(GaugeSpec spec, FrontEnd frontEnd, int tickMillis, SeedTree seeds, Observer observer) {
        this.spec = spec;
        this.settings = spec.settings();
        this.tickMillis = tickMillis;
        this.observer = observer;
        this.frontEnd = frontEnd;
        frontEnd.setClock(spec.clock());
        this.supply = new Supply(spec.power());
        MemorySpec fitted = spec.power().memory();
        this.memory = fitted == null ? null : new LaneMemory(fitted, seeds, spec.name());
        this.store = observer.watch(this, memory == null ? StateStore.NONE : memory);
        this.device = observer.watch(this, build());
    }

    private GaugeDevice build() {
        return switch (spec.kind()) {
            case CORE ->
                    new CoreDevice(
                            settings,
                            store,
                            (Event event, long uptimeMillis, long value) ->
                                    observer.onEvent(this, event, value));
            case PLAIN_COUNTER -> new PlainCounter(spec.settings());
            case EXHIBIT ->
                    new ExhibitGauge(
                            spec.settings(),
                            spec.mistakes(),
                            tickMillis,
                            store,
                            (Event event, long uptimeMillis, long value) ->
                                    observer.onEvent(this, event, value));
        };
    }

    /** Power comes up unless it was switched off before the run. */
    void start(Truth truth) {
        if (!supply.isOn() && supply.isDue(truth.timeMillis())) {
            powerUp(truth);
        }
    }

    /**
     * The first sample sets the clock. At the very first power-up the start is declared then; later
     * a gauge knows what it kept.
     */
    private void powerUp(Truth truth) {
        long now = truth.timeMillis();
        isBusy = true;
        supply.switchOn();
        frontEnd.restartClock(now);
        if (everStarted) {
            restart(now);
        } else {
            device.powerUp(0, OffTime.EXACT);
        }
        tick(truth);
        if (!everStarted && spec.declaredPartsPerMillion() >= 0) {
            declare(spec.declaredPartsPerMillion());
        }
        everStarted = true;
    }

    private void restart(long nowMillis) {
        if (memory != null) {
            memory.setTimeMillis(nowMillis);
            memory.powerUp();
        }
        if (spec.kind() == GaugeSpec.Kind.CORE) {
            device = observer.watch(this, build());
        } else {
            device.changeSettings(settings);
        }
        device.powerUp(supply.shownOffMillis(nowMillis), supply.offTime());
    }

    void tick(Truth truth) {
        boolean arrived = frontEnd.sample(truth, sample);
        isBusy = true;
        if (!supply.isOn()) {
            start(truth);
        } else if (arrived) {
            feed(truth);
        }
        settle();
    }

    private void feed(Truth truth) {
        if (memory == null) {
            device.tick(sample);
        } else {
            tick(truth.timeMillis(), memory);
        }
    }

    private void tick(long nowMillis, LaneMemory fitted) {
        fitted.setTimeMillis(nowMillis);
        try {
            device.tick(sample);
        } catch (PowerCut cut) {
            supply.cut(nowMillis);
        }
    }

    void setWiring(WiringSpec wiring) {
        frontEnd.setWiring(wiring);
    }

    /** Takes a change of the timeline that is meant for this gauge or for its front end. */
    void apply(Change change, Truth truth) {
        switch (change.target()) {
            case SENSOR_OFFSET -> frontEnd.setOffsetNanovolts(change.value());
            case SENSOR_TRAIT -> frontEnd.set(SensorTrait.of(change.name()), change.value());
            case SENSOR_SAMPLES -> frontEnd.setMode(SampleMode.values()[(int) change.value()]);
            case CLOCK_ERROR -> frontEnd.setClockError(change.value());
            case CLOCK_JITTER -> frontEnd.setClockJitter(change.value());
            case CLOCK_JUMP -> frontEnd.jumpClock(change.value());
            case CLOCK_SWITCH -> frontEnd.setClockRunning(change.value() == 1);
            case DECLARE -> declare(change.value());
            case GAUGE_OFF_TIME -> supply.setOffTime(OffTime.values()[(int) change.value()]);
            case GAUGE_POWER -> switchPower(change.value() == 1, truth);
            case GAUGE_CUT -> {
                if (memory != null) {
                    memory.cutAtWrite(change.value(), spec.power().cutLeaves());
                }
            }
            default -> throw new IllegalArgumentException(change.target() + " is not a gauge's");
        }
    }

    private void switchPower(boolean on, Truth truth) {
        isBusy = true;
        if (!on) {
            supply.switchOff(truth.timeMillis());
        } else if (!supply.isOn()) {
            powerUp(truth);
        }
        settle();
    }

    /** What happened to the gauge is over: the next who looks has to ask it. */
    private void settle() {
        isBusy = false;
        isRead = false;
    }

    private void declare(long partsPerMillion) {
        command(Command.DECLARE_STATE_OF_CHARGE, partsPerMillion);
    }

    /** A gauge without power hears nothing. */
    void command(Command command, long argument) {
        if (supply.isOn()) {
            isBusy = true;
            CommandOutcome outcome = device.command(command, argument);
            settle();
            observer.onAnswer(this, command, outcome);
        }
    }

    /** Keeps a setting until {@link #changeSettings()}: several may have to change at once. */
    void prepare(Setting setting, long value) {
        if (prepared == null) {
            prepared = settings.toBuilder();
        }
        prepared.set(setting, value);
    }

    /** Hands over what was prepared; a gauge without power finds it when power comes back. */
    void changeSettings() {
        GaugeSettings.Builder builder = prepared;
        if (builder == null) {
            return;
        }
        prepared = null;
        settings = builder.build();
        isBusy = true;
        if (supply.isOn()) {
            device.changeSettings(settings);
        }
        settle();
    }

    /** Folds the registers of this moment into the lane's digest; zeros while there is no power. */
    void foldDigest() {
        digest = digestIfFolded();
    }

    /** What the digest would be after a fold now. */
    long digestIfFolded() {
        return inspect().fold(digest);
    }

    /** Whether the gauge has power; without it, it shows nothing. */
    public boolean hasPower() {
        return supply.isOn();
    }

    /** The gauge's name in the scenario. */
    public String name() {
        return spec.name();
    }

    /** What the scenario says of it. */
    public GaugeSpec spec() {
        return spec;
    }

    /**
     * The readout of this moment; the object is reused by the next call. Between two ticks a gauge
     * is asked once: many look at it then, and an answer costs more than a tick. In the middle of a
     * tick, where an event is told, it is asked each time.
     */
    public Readout read() {
        if (!supply.isOn()) {
            return blank();
        }
        if (isBusy || !isRead) {
            device.read(readout);
            isRead = true;
        }
        return readout;
    }

    /**
     * Current, voltage and temperature of the last sample, for a lane that has power; the rest of
     * the object means nothing. Cheap enough for every tick.
     */
    public Readout readSample() {
        device.readSample(sampleReadout);
        return sampleReadout;
    }

    private static Readout blank() {
        Readout blank = new Readout();
        blank.stateOfChargePartsPerMillion = Readout.NOT_KNOWN;
        blank.temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;
        return blank;
    }

    /** The registers of this moment; the object is reused by the next call. */
    public Registers inspect() {
        if (!supply.isOn()) {
            return blankRegisters;
        }
        device.inspect(registers);
        return registers;
    }

    /** The registers that a gauge holds, with power or without; the object is used again. */
    Registers held() {
        device.inspect(registers);
        return registers;
    }

    /** The fold of the registers of every whole minute so far. */
    public long digest() {
        return digest;
    }
}
