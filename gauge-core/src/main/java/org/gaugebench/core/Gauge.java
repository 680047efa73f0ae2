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
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.saved.SaveOutcome;
import org.gaugebench.core.saved.SaveReason;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.sense.ElapsedTime;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * A battery gauge: counts in, a readout out.
 *
 * <p>Not thread-safe. {@link #tick}, {@link #read}, {@link #inspect} and {@link #command} allocate
 * nothing; the constructor, {@link #powerUp}, {@link #changeSettings} and a span or zero adjustment
 * that is accepted do. No method throws after construction.
 */
public final class Gauge {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final int MINUTE_MILLIS = 60_000;

    private final EventSink events;

    // Stages, in the order in which a sample passes.
    private final ElapsedTime clock = new ElapsedTime();
    private final FaultLog faults;
    private final GaugeMemory memory;
    private LastSample last = new LastSample();
    private EnergyCounter energy = new EnergyCounter();
    private Corrections corrections;
    private Stages s;
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
     * <p>What is not in the memory starts as from the factory, also where this object ran before.
     *
     * @param offMillis how long power was off, as far as known; less than 0 is taken as 0
     * @param offTime how well that is known; anything but EXACT leaves the band without a limit
     */
    public void powerUp(long offMillis, OffTime offTime) {
        Objects.requireNonNull(offTime);
        long restOffMillis = Math.max(offMillis, 0);
        clock.restart();
        faults.restart();
        last = new LastSample();
        energy = new EnergyCounter();
        corrections = new Corrections(events);
        s = new Stages(s.settings);
        SlotOutcome found = memory.open();
        checkBattery = found != SlotOutcome.NONE_VALID && found != SlotOutcome.FOREIGN_BATTERY;
        events.onEvent(Event.POWERED_UP, 0, restOffMillis);
        if (checkBattery) {
            restore(found, restOffMillis, offTime);
        } else if (found == SlotOutcome.FOREIGN_BATTERY) {
            events.onEvent(Event.NEW_BATTERY, 0, 0);
        }
        memory.begin(s);
        s.beginQuietTime();
        afterCommand();
        faults.stand(
                Fault.ADJUSTMENT_LOST.bit(), memory.isLost() ? Fault.ADJUSTMENT_LOST.bit() : 0, 0);
    }

    private void restore(SlotOutcome found, long offMillis, OffTime offTime) {
        long step = memory.restore(s, energy, corrections);
        s.markAccounted();
        memory.widenRestored(s);
        if (offTime == OffTime.EXACT) {
            s.band.addOffTime(offMillis, s.offMicroamps());
            s.diagnosis.addOffTime(offMillis / MINUTE_MILLIS);
        } else {
            s.band.forget();
        }
        events.onEvent(Event.RESTORED, 0, s.stateOfChargePartsPerMillion());
        if (found == SlotOutcome.FOREIGN_SETTINGS) {
            events.onEvent(Event.SETTINGS_CHANGED, 0, corrections.isKnown() ? step : 0);
        }
    }

    /**
     * Takes one sample: check, sense, add, decide, apply, estimate.
     *
     * <p>Nearly every tick lies within a minute and brings a sample with which nothing is wrong: it
     * only adds.
     *
     * @param sample the reading; not kept
     */
    public void tick(Sample sample) {
        faults.beginTick();
        int elapsedMillis = clock.advance(sample.clockMillis);
        if (elapsedMillis > 0
                && elapsedMillis < s.minute.millisLeft()
                && !checkBattery
                && last.takeInRange(sample, s)) {
            s.addStretch(last, energy, elapsedMillis);
            if (memory.due(s, last.voltageMicrovolts, elapsedMillis) != SaveReason.NONE) {
                save();
            }
        } else {
            tickInFull(sample, elapsedMillis);
        }
    }

    /**
     * Any tick, in the order in which each may look at what the one before did.
     *
     * <p>One long method on purpose ({@code TickSizeTest}): the JVM puts a shorter one into its
     * caller, and each tick would pay a tenth of its time for what comes once a minute.
     */
    private void tickInFull(Sample sample, int elapsedMillis) {
        if (last.take(sample, s, faults, clock.uptimeMillis()) && checkBattery) {
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
        int leftMillis = elapsedMillis;
        while (leftMillis >= s.minute.millisLeft()) {
            int stretchMillis = s.minute.millisLeft();
            s.addChecked(last, energy, faults.momentaryBits(), stretchMillis);
            leftMillis -= stretchMillis;
            // The minute is whole: settle it, then let the rules look at it, then estimate.
            s.minute.close();
            int temperatureMillicelsius = last.temperatureMillicelsius;
            int warmthQ8 = SelfDischarge.warmthQ8(temperatureMillicelsius);
            s.charge.settleMinute(s.selfDischarge.minuteNanocoulombs(warmthQ8));
            s.account(MINUTE_MILLIS, warmthQ8);
            corrections.announceLimits(s, clock.uptimeMillis());
            s.capacity.addMinute(s.minute, temperatureMillicelsius);
            s.efficiency.addMinute(s.minute, s.fullRule.isKeptFull());
            s.updateBand();
            if (corrections.decide(s, temperatureMillicelsius, clock.uptimeMillis())) {
                memory.anchored();
            }
            faults.stand(
                    FaultLog.DIAGNOSED_BITS,
                    s.diagnosis.judge(s.minute, s.fullRule, s.capacity.measuredMilliampHours()),
                    clock.uptimeMillis());
            s.loadFilter.closeMinute(s.minute.meanMicroamps());
            s.updateMinuteEstimates(corrections.isKnown());
            s.shown.addMinute();
            updateEstimates();
        }
        if (leftMillis > 0) {
            s.addChecked(last, energy, faults.momentaryBits(), leftMillis);
        }
        if (memory.due(s, last.voltageMicrovolts, elapsedMillis) != SaveReason.NONE) {
            save();
        }
    }

    private void save() {
        SaveOutcome outcome = memory.save(s, energy, corrections, clock.uptimeMillis(), last);
        if (corrections.firstSaveOnRecord() && !outcome.isSaved()) {
            s.band.forget();
        }
        faults.stand(
                Fault.MEMORY_FAILING.bit(),
                outcome.isMemoryFault() ? Fault.MEMORY_FAILING.bit() : 0,
                clock.uptimeMillis());
    }

    /**
     * The first plausible sample after a restart: a rested voltage far from the rested one that was
     * saved is another battery, and nothing is known of it.
     */
    private void checkSameBattery() {
        checkBattery = false;
        if (s.isOtherRestVoltage(
                memory.savedMicrovolts(),
                memory.savedMicroamps(),
                last.voltageMicrovolts,
                last.currentMicroamps)) {
            s.band.forget();
            afterCommand();
            events.onEvent(Event.BATTERY_DOUBTFUL, clock.uptimeMillis(), last.voltageMicrovolts);
        }
    }

    /** An interval that no sample stands for: not counted, the minute under way starts again. */
    private void skip(int elapsedMillis) {
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
        // Gaps less than a minute apart close no minute, yet the figures shown must follow.
        afterCommand();
    }

    private void endMinuteEarly() {
        int millis = s.minute.millis();
        s.charge.settleMinute();
        s.account(millis, SelfDischarge.warmthQ8(last.temperatureMillicelsius));
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
                corrections.newBattery(s, energy, clock.uptimeMillis());
                memory.anchored();
                afterCommand();
                yield CommandOutcome.DONE;
            }
            case FORGET_MEASURED -> {
                s.capacity.forget();
                s.efficiency.forget();
                memory.anchored();
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
            s.beginQuietTime();
            memory.anchored();
            faults.stand(Fault.ADJUSTMENT_LOST.bit(), 0, clock.uptimeMillis());
            events.onEvent(Event.ADJUSTED, clock.uptimeMillis(), s.adjustment.zeroCountsQ8());
            afterCommand();
        }
        return outcome;
    }

    private CommandOutcome declare(long partsPerMillion) {
        if (partsPerMillion < 0 || partsPerMillion > FULL_PARTS_PER_MILLION) {
            return CommandOutcome.REFUSED_OUT_OF_RANGE;
        }
        corrections.declare(partsPerMillion, s, clock.uptimeMillis());
        memory.anchored();
        afterCommand();
        return CommandOutcome.DONE;
    }

    private void afterCommand() {
        s.updateBand();
        updateEstimates();
    }

    private void updateEstimates() {
        s.updateEstimates(
                corrections.isKnown(), last.currentMicroamps, last.temperatureMillicelsius);
        s.shown.update(s, corrections.isKnown());
        s.bus.update(s, corrections.isKnown(), last);
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
            SettingsChange.carryAdjustment(s, next);
            s = next;
            corrections.newBattery(s, energy, clock.uptimeMillis());
        } else {
            long step = SettingsChange.carryOver(s, next);
            s = next;
            events.onEvent(
                    Event.SETTINGS_CHANGED, clock.uptimeMillis(), corrections.isKnown() ? step : 0);
        }
        s.markAccounted();
        memory.settingsChanged(s);
        s.beginQuietTime();
        afterCommand();
    }

    /**
     * Fills a readout with figures of one instant.
     *
     * @param readout receives them
     */
    public void read(Readout readout) {
        // The edges belong to the count of this instant, not to that of the last whole minute.
        s.updateBand();
        Inspection.read(s, corrections, faults, readout);
        s.shown.read(last.currentMicroamps, readout);
        last.read(readout);
    }

    /** Fills current, voltage and temperature of the last sample alone: cheap at every tick. */
    public void readSample(Readout readout) {
        last.read(readout);
    }

    /**
     * Fills the table of everything that can be looked at.
     *
     * @param r receives it
     */
    public void inspect(Registers r) {
        s.updateBand();
        r.set(Register.CLOCK_MILLIS, clock.lastClockMillis() & 0xFFFFFFFFL);
        r.set(Register.UPTIME_MILLIS, clock.uptimeMillis());
        last.inspect(r);
        r.set(Register.SAVES, memory.saves());
        s.shown.inspect(last.currentMicroamps, r);
        Inspection.inspect(s, energy, corrections, faults, r);
    }

    /**
     * Reads one word of the bus view (the V rules of {@code docs/rules.md}).
     *
     * @param code function code, {@link SmartBatteryWord}
     * @return the word, 0 to 65,535; 0 with the error in the status word for a code without answer
     */
    public int readBus(int code) {
        s.updateBand();
        s.bus.update(s, corrections.isKnown(), last);
        return s.bus.read(code);
    }

    /**
     * Writes one of the three words of the bus view that are the host's.
     *
     * @param code function code
     * @param value sixteen bits; lasts until power goes or settings change
     * @return whether it was taken; else the status word carries the error
     */
    public boolean writeBus(int code, int value) {
        return s.bus.write(code, value);
    }

    /** {@return the fault log, this gauge's own and live} */
    public FaultLog faults() {
        return faults;
    }
}
