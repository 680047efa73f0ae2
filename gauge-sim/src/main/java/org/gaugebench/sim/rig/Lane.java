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
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeProgram;
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
    private final @Nullable ProgramSeat seat;
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
    private long nowMillis;
    private long digest = Registers.DIGEST_START;

    /** Builds a gauge on a front end of its own making: that of a twin. */
    Lane(GaugeSpec spec, FrontEnd frontEnd, int tickMillis, SeedTree seeds, Observer observer) {
        this(spec, frontEnd, tickMillis, seeds, observer, new LookBack(), null);
    }

    /**
     * Builds a gauge, or a program in its place.
     *
     * @param tickMillis interval at which an exhibit thinks that samples come
     * @param lookBack is told when the gauge speaks of a tick that is past
     * @param command how the program is started; null for a gauge of ours
     */
    Lane(
            GaugeSpec spec,
            FrontEnd frontEnd,
            int tickMillis,
            SeedTree seeds,
            Observer observer,
            LookBack lookBack,
            @Nullable PipeCommand command) {
        this.spec = spec;
        this.settings = spec.settings();
        this.tickMillis = tickMillis;
        this.observer = observer;
        this.frontEnd = frontEnd;
        frontEnd.setClock(spec.clock());
        this.supply = new Supply(spec.power());
        MemorySpec fitted = spec.power().memory();
        this.memory =
                fitted == null
                        ? null
                        : new LaneMemory(fitted, seeds, spec.name(), this::usedMillis);
        this.store = observer.watch(this, memory == null ? StateStore.NONE : memory);
        this.seat = command == null ? null : new ProgramSeat(command, store, lookBack, observer);
        this.device = observer.watch(this, build());
    }

    private GaugeDevice build() {
        return switch (spec.kind()) {
            case CORE -> buildCore();
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

    private GaugeDevice buildCore() {
        ProgramSeat taken = seat;
        if (taken != null) {
            return taken.build(
                    settings,
                    (Event event, long uptimeMillis, long value) ->
                            taken.tell(device, () -> observer.onEvent(this, event, value)));
        }
        return new CoreDevice(
                settings,
                store,
                (Event event, long uptimeMillis, long value) ->
                        observer.onEvent(this, event, value));
    }

    /** The time of the tick that uses the memory. */
    private long usedMillis() {
        return seat == null ? nowMillis : seat.timeMillis(device, nowMillis);
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
        nowMillis = truth.timeMillis();
        isBusy = true;
        supply.switchOn();
        frontEnd.restartClock(nowMillis);
        boolean isFirst = !everStarted;
        everStarted = true;
        try {
            if (isFirst) {
                device.powerUp(0, OffTime.EXACT);
            } else {
                restart();
            }
        } catch (PowerCut cut) {
            supply.cut(nowMillis);
            return;
        }
        tick(truth);
        if (isFirst && spec.declaredPartsPerMillion() >= 0) {
            declare(spec.declaredPartsPerMillion());
        }
    }

    private void restart() {
        if (memory != null) {
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
        over();
    }

    private void feed(Truth truth) {
        nowMillis = truth.timeMillis();
        if (seat != null) {
            seat.feed(device, truth);
        }
        if (memory == null) {
            device.tick(sample);
        } else {
            tick(memory);
        }
    }

    private void tick(LaneMemory fitted) {
        try {
            device.tick(sample);
            if (fitted.isCutDue()) {
                device.settle();
            }
        } catch (PowerCut cut) {
            supply.cut(nowMillis);
        }
    }

    /** The gauge works through what it was given: somebody is about to look, or to change it. */
    void settle() {
        if (supply.isOn()) {
            device.settle();
        }
    }

    /** The program in this gauge's place, or null. */
    public @Nullable PipeProgram program() {
        return seat == null ? null : seat.program();
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
        over();
    }

    /** What happened to the gauge is over: the next who looks has to ask it. */
    private void over() {
        isBusy = false;
        isRead = false;
    }

    private void declare(long partsPerMillion) {
        command(Command.DECLARE_STATE_OF_CHARGE, partsPerMillion);
    }

    /** A gauge without power hears nothing. */
    void command(Command command, long argument) {
        if (!supply.isOn()) {
            return;
        }
        isBusy = true;
        CommandOutcome outcome;
        try {
            outcome = device.command(command, argument);
        } catch (PowerCut cut) {
            supply.cut(nowMillis);
            return;
        } finally {
            over();
        }
        observer.onAnswer(this, command, outcome);
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
        if (!supply.isOn()) {
            return;
        }
        isBusy = true;
        try {
            device.changeSettings(settings);
        } catch (PowerCut cut) {
            supply.cut(nowMillis);
        }
        over();
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

    /** The settings in force; a gauge without power finds them when power comes back. */
    public GaugeSettings settings() {
        return settings;
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
        // A program tells events of its own time, whoever makes it work: what it shows is asked
        // anew.
        if (isBusy || !isRead || seat != null) {
            device.read(readout);
            isRead = true;
        }
        return readout;
    }

    /**
     * What {@link GaugeDevice#readSample} fills, for a lane that has power; the rest of the object
     * means nothing. Cheap enough for every tick.
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
