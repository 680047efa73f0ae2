package org.gaugebench.core;

import java.util.Objects;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.rules.RuleOutcome;
import org.gaugebench.core.saved.SaveOutcome;
import org.gaugebench.core.saved.SaveReason;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.sense.ElapsedTime;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * A battery gauge: counts in, a readout out.
 *
 * <p>Not thread-safe. Everything is allocated in the constructor; {@link #tick}, {@link #read},
 * {@link #inspect} and {@link #command} allocate nothing. No method throws after construction.
 */
public final class Gauge {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;

    private static final int MINUTE_MILLIS = 60_000;

    /** The standing faults that the diagnosis judges; the memory's are judged where it is used. */
    private static final int DIAGNOSED_BITS =
            Fault.MEMORY_FAILING.bit() - Fault.POLARITY_REVERSED.bit();

    // Stages, in the order in which a sample passes.
    private final ElapsedTime clock = new ElapsedTime();
    private final EnergyCounter energy = new EnergyCounter();
    private final FaultLog faults;
    private final Corrections corrections;
    private final GaugeMemory memory;
    private Stages s;

    // The outside.
    private final EventSink events;

    // State: the last sample, converted.
    private int shuntCounts;
    private int voltageCounts;
    private int currentMicroamps;
    private int voltageMicrovolts;
    private int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;
    private boolean checkBattery;

    /**
     * Builds a gauge. Call {@link #powerUp} before the first tick.
     *
     * @param settings checked settings
     * @param store memory that survives a power cut; {@link StateStore#NONE} where there is none
     * @param events receives what the gauge announces; {@link EventSink#NONE} to drop it
     */
    public Gauge(GaugeSettings settings, StateStore store, EventSink events) {
        this.events = Objects.requireNonNull(events);
        s = new Stages(settings);
        memory = new GaugeMemory(store, settings);
        corrections = new Corrections(events);
        faults = new FaultLog(events);
    }

    /**
     * Power came up: the newest saved record is taken over, and the time without power widens the
     * band. Without a record the state of charge is unknown until it is declared or proven; it is
     * never guessed. Nothing is written.
     *
     * @param offMillis how long power was off, as far as known; at least 0
     * @param offTime how well that is known; anything but EXACT leaves the band without a limit
     */
    public void powerUp(long offMillis, OffTime offTime) {
        Objects.requireNonNull(offTime);
        clock.restart();
        SlotOutcome found = memory.open();
        boolean restored = found != SlotOutcome.NONE_VALID && found != SlotOutcome.FOREIGN_BATTERY;
        if (restored) {
            memory.restore(s, energy, corrections);
            s.markAccounted();
            if (offTime == OffTime.EXACT) {
                s.band.addOffTime(offMillis, s.offMicroamps());
            } else {
                s.band.forget();
            }
            checkBattery = true;
        }
        s.fullRule.beginQuietTime();
        s.updateBand();
        events.onEvent(Event.POWERED_UP, 0, offMillis);
        if (restored) {
            events.onEvent(Event.RESTORED, 0, s.stateOfChargePartsPerMillion());
        }
        faults.stand(
                Fault.ADJUSTMENT_LOST.bit(), memory.isLost() ? Fault.ADJUSTMENT_LOST.bit() : 0, 0);
    }

    /**
     * Takes one sample: check, sense, add, decide, apply, estimate.
     *
     * @param sample the reading; not kept
     */
    public void tick(Sample sample) {
        faults.beginTick();
        long elapsedMillis = clock.advance(sample.clockMillis);
        sense(sample);
        if (checkBattery) {
            checkSameBattery();
        }
        if (elapsedMillis == 0 && clock.isPastFirst()) {
            faults.raise(Fault.SAMPLE_REPEATED, clock.uptimeMillis());
            return;
        }
        if (elapsedMillis > ElapsedTime.LONGEST_TICK_MILLIS || elapsedMillis < 0) {
            skip(elapsedMillis);
            return;
        }
        int leftMillis = (int) elapsedMillis;
        while (leftMillis >= s.minute.millisLeft()) {
            int stretchMillis = s.minute.millisLeft();
            add(stretchMillis);
            leftMillis -= stretchMillis;
            closeMinute();
        }
        if (leftMillis > 0) {
            add(leftMillis);
        }
        SaveReason due = memory.due(s, voltageMicrovolts, (int) elapsedMillis);
        if (due != SaveReason.NONE) {
            save();
        }
    }

    private void save() {
        SaveOutcome outcome =
                memory.save(
                        s,
                        energy,
                        corrections,
                        clock.uptimeMillis(),
                        voltageMicrovolts,
                        currentMicroamps);
        faults.stand(
                Fault.MEMORY_FAILING.bit(),
                outcome.isMemoryFault() ? Fault.MEMORY_FAILING.bit() : 0,
                clock.uptimeMillis());
    }

    /**
     * The first sample after a restart: a rested voltage far from the rested one that was saved is
     * another battery, and nothing is known of it.
     */
    private void checkSameBattery() {
        checkBattery = false;
        if (s.isOtherRestVoltage(
                memory.savedMicrovolts(),
                memory.savedMicroamps(),
                voltageMicrovolts,
                currentMicroamps)) {
            s.band.forget();
            s.updateBand();
            events.onEvent(Event.BATTERY_DOUBTFUL, 0, voltageMicrovolts);
        }
    }

    private void sense(Sample sample) {
        if (s.currentSense.isImplausible(sample.shuntCounts)
                || s.voltageSense.isImplausible(sample.voltageCounts)) {
            // The last plausible figures stand: a garbage frame must become neither amps nor the
            // volts that prove full.
            faults.raise(Fault.COUNTS_IMPLAUSIBLE, clock.uptimeMillis());
            return;
        }
        shuntCounts = sample.shuntCounts;
        currentMicroamps = s.currentSense.microampsFromCounts(shuntCounts);
        if (s.currentSense.isClipped(shuntCounts)) {
            faults.raise(Fault.SHUNT_CLIPPED, clock.uptimeMillis());
        }
        voltageCounts = sample.voltageCounts;
        voltageMicrovolts = s.voltageSense.microvoltsFromCounts(voltageCounts);
        if (s.voltageSense.isClipped(voltageCounts)) {
            faults.raise(Fault.VOLTAGE_CLIPPED, clock.uptimeMillis());
        }
        temperatureMillicelsius = sample.temperatureMillicelsius;
    }

    private void add(int millis) {
        s.charge.add(currentMicroamps, millis);
        energy.add(voltageMicrovolts / MICROVOLTS_PER_MILLIVOLT, currentMicroamps, millis);
        s.minute.add(currentMicroamps, voltageMicrovolts, millis);
        s.loadFilter.addStretch(currentMicroamps, millis);
        if (faults.momentaryBits() != 0) {
            // A rail or a garbage frame hides what really flowed in this stretch.
            s.band.addUnmeasured(millis);
            s.minute.spoil();
            s.capacity.spoil();
            s.efficiency.spoil();
        }
    }

    /** The minute is whole: settle it, then let the rules look at it, then estimate. */
    private void closeMinute() {
        s.minute.close();
        int warmthQ8 = SelfDischarge.warmthQ8(temperatureMillicelsius);
        s.charge.settleMinute(s.selfDischarge.minuteNanocoulombs(warmthQ8));
        s.account(MINUTE_MILLIS, warmthQ8);
        corrections.announceLimits(s, clock.uptimeMillis());
        s.capacity.addMinute(s.minute, temperatureMillicelsius);
        s.efficiency.addMinute(s.minute);
        s.updateBand();
        decide();
        s.updateBand();
        faults.stand(
                DIAGNOSED_BITS,
                s.diagnosis.judge(s.minute, s.fullRule, s.capacity.measuredMilliampHours()),
                clock.uptimeMillis());
        s.loadFilter.addMinute(s.minute.meanMicroamps());
        s.timeToEmpty.update(s.charge.chargeNanocoulombs(), s.loadFilter, corrections.isKnown());
    }

    /** At most one rule sets the count in one minute: full, else empty, else rest. */
    private void decide() {
        long now = clock.uptimeMillis();
        int shown = s.stateOfChargePartsPerMillion();
        RuleOutcome full =
                s.fullRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        s.band.upperEdgePartsPerMillion(),
                        s.charge.isAtUpperLimit());
        boolean set = corrections.apply(full, s, now);

        RuleOutcome empty =
                s.emptyRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        shown,
                        s.band.lowerEdgePartsPerMillion());
        set = set || corrections.apply(empty, s, now);
        RuleOutcome rest =
                s.restRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        shown,
                        s.band.halfWidthPartsPerMillion());
        set = set || corrections.apply(rest, s, now);
        if (set) {
            memory.anchored();
        }
    }

    /** An interval that no sample stands for: not counted, the minute under way starts again. */
    private void skip(long elapsedMillis) {
        faults.raise(
                elapsedMillis < 0 ? Fault.CLOCK_BACKWARDS : Fault.SAMPLES_MISSING,
                clock.uptimeMillis());
        endMinuteEarly();
        // A clock that ran backwards may hide any time; half its range is the least that it hides.
        s.band.addUnmeasured(elapsedMillis < 0 ? Integer.MAX_VALUE : elapsedMillis);
        s.fullRule.samplesMissing();
        s.emptyRule.samplesMissing();
        s.restRule.samplesMissing();
        s.diagnosis.samplesMissing();
        s.capacity.spoil();
        s.efficiency.spoil();
        s.updateBand();
    }

    private void endMinuteEarly() {
        int millis = s.minute.millis();
        s.charge.settleMinute();
        s.account(millis, SelfDischarge.warmthQ8(temperatureMillicelsius));
        s.minute.abandon();
        s.loadFilter.abandonMinute();
    }

    /**
     * Carries out a command between two ticks.
     *
     * @param command what is asked
     * @param argument the command's figure
     * @return one word
     */
    public CommandOutcome command(Command command, long argument) {
        return switch (command) {
            case DECLARE_STATE_OF_CHARGE -> declare(argument);
            case NEW_BATTERY -> {
                endMinuteEarly();
                corrections.newBattery(s, clock.uptimeMillis());
                afterCommand();
                yield CommandOutcome.DONE;
            }
            case FORGET_MEASURED -> {
                s.capacity.forget();
                s.efficiency.forget();
                yield CommandOutcome.DONE;
            }
            case ZERO_ADJUSTMENT, SPAN_ADJUSTMENT -> adjust(command, argument);
        };
    }

    private CommandOutcome adjust(Command command, long referenceMicroamps) {
        if (!s.minute.isAnyWhole()) {
            return CommandOutcome.REFUSED_NO_MINUTE;
        }
        int mean = s.minute.meanMicroamps();
        int lowest = s.minute.lowestMicroamps();
        int highest = s.minute.highestMicroamps();
        CommandOutcome outcome =
                command == Command.ZERO_ADJUSTMENT
                        ? s.adjustment.zero(mean, lowest, highest, s.currentSense)
                        : s.adjustment.span(mean, lowest, highest, referenceMicroamps);
        if (outcome == CommandOutcome.DONE) {
            endMinuteEarly();
            s.adopt();
            s.fullRule.beginQuietTime();
            events.onEvent(Event.ADJUSTED, clock.uptimeMillis(), s.adjustment.zeroCountsQ8());
        }
        return outcome;
    }

    private CommandOutcome declare(long partsPerMillion) {
        if (partsPerMillion < 0 || partsPerMillion > FULL_PARTS_PER_MILLION) {
            return CommandOutcome.REFUSED_OUT_OF_RANGE;
        }
        corrections.declare(partsPerMillion, s, clock.uptimeMillis());
        afterCommand();
        return CommandOutcome.DONE;
    }

    private void afterCommand() {
        s.updateBand();
        s.timeToEmpty.update(s.charge.chargeNanocoulombs(), s.loadFilter, corrections.isKnown());
    }

    /**
     * Takes other settings, between two ticks. The stages are built anew and the state is carried
     * over; settings of another chemistry or system voltage are another battery.
     *
     * @param settings checked settings
     */
    public void changeSettings(GaugeSettings settings) {
        Stages next = new Stages(settings);
        endMinuteEarly();
        if (SettingsChange.isOtherBattery(s, next)) {
            s = next;
            corrections.newBattery(s, clock.uptimeMillis());
        } else {
            long step = SettingsChange.carryOver(s, next);
            s = next;
            events.onEvent(Event.SETTINGS_CHANGED, clock.uptimeMillis(), step);
        }
        s.markAccounted();
        memory.settingsChanged(s);
        s.fullRule.beginQuietTime();
        afterCommand();
    }

    /**
     * Fills a readout with figures of one instant.
     *
     * @param readout receives them
     */
    public void read(Readout readout) {
        Inspection.read(s, corrections, faults, readout);
        readout.currentMicroamps = currentMicroamps;
        readout.voltageMicrovolts = voltageMicrovolts;
        readout.temperatureMillicelsius = temperatureMillicelsius;
    }

    /**
     * Fills the table of everything that can be looked at.
     *
     * @param r receives it
     */
    public void inspect(Registers r) {
        r.set(Register.CLOCK_MILLIS, clock.lastClockMillis() & 0xFFFFFFFFL);
        r.set(Register.UPTIME_MILLIS, clock.uptimeMillis());
        r.set(Register.SHUNT_COUNTS, shuntCounts);
        r.set(Register.VOLTAGE_COUNTS, voltageCounts);
        r.set(Register.CURRENT_MICROAMPS, currentMicroamps);
        r.set(Register.VOLTAGE_MICROVOLTS, voltageMicrovolts);
        r.set(Register.TEMPERATURE_MILLICELSIUS, temperatureMillicelsius);
        r.set(Register.SAVES, memory.saves());
        Inspection.inspect(s, energy, corrections, faults, r);
    }

    /**
     * The fault log.
     *
     * @return this gauge's own, live
     */
    public FaultLog faults() {
        return faults;
    }
}
