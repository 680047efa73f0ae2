package org.gaugebench.core;

import java.util.Objects;
import org.gaugebench.core.charge.ChargeAccumulator;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.estimate.LoadFilter;
import org.gaugebench.core.estimate.TimeToEmpty;
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
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.rules.FullChargeRule;
import org.gaugebench.core.rules.RuleOutcome;
import org.gaugebench.core.sense.CurrentSense;
import org.gaugebench.core.sense.ElapsedTime;
import org.gaugebench.core.sense.VoltageSense;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * A battery gauge: counts in, a readout out.
 *
 * <p>Not thread-safe. Everything is allocated in the constructor; {@link #tick}, {@link #read},
 * {@link #inspect} and {@link #command} allocate nothing. No method throws after construction.
 */
public final class Gauge {
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;

    // Stages, in the order in which a sample passes.
    private final ElapsedTime clock = new ElapsedTime();
    private final CurrentSense currentSense;
    private final VoltageSense voltageSense;
    private final ChargeAccumulator charge;
    private final EnergyCounter energy = new EnergyCounter();
    private final MinuteMean minute = new MinuteMean();
    private final FullChargeRule fullRule;
    private final LoadFilter loadFilter = new LoadFilter();
    private final TimeToEmpty timeToEmpty;
    private final FaultLog faults;

    // The outside.
    private final EventSink events;

    // State: the last sample, converted.
    private int shuntCounts;
    private int voltageCounts;
    private int currentMicroamps;
    private int voltageMicrovolts;
    private int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;
    private Trust trust = Trust.UNKNOWN;
    private boolean heldAtLimit;
    private boolean heldAtEmpty;

    /**
     * Builds a gauge. Call {@link #powerUp} before the first tick.
     *
     * @param settings checked settings
     * @param store memory that survives a power cut; {@link StateStore#NONE} where there is none
     * @param events receives what the gauge announces; {@link EventSink#NONE} to drop it
     */
    public Gauge(GaugeSettings settings, StateStore store, EventSink events) {
        this.events = Objects.requireNonNull(events);
        Objects.requireNonNull(store);
        currentSense = new CurrentSense(settings);
        voltageSense = new VoltageSense(settings);
        charge =
                new ChargeAccumulator(
                        settings.get(Setting.CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR,
                        settings.get(Setting.COULOMBIC_EFFICIENCY));
        fullRule = new FullChargeRule(settings);
        timeToEmpty = new TimeToEmpty(settings);
        faults = new FaultLog(events);
    }

    /**
     * Power came up. Without a saved state (this core keeps none yet) the state of charge is
     * unknown until it is declared or full is proven; it is never guessed.
     *
     * @param offMillis how long power was off, as far as known; at least 0
     * @param offTime how well that is known
     */
    public void powerUp(long offMillis, OffTime offTime) {
        Objects.requireNonNull(offTime);
        clock.restart();
        events.onEvent(Event.POWERED_UP, 0, offMillis);
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
        if (elapsedMillis > ElapsedTime.LONGEST_TICK_MILLIS || elapsedMillis < 0) {
            skip(elapsedMillis);
            return;
        }
        int leftMillis = (int) elapsedMillis;
        while (leftMillis >= minute.millisLeft()) {
            int stretchMillis = minute.millisLeft();
            add(stretchMillis);
            leftMillis -= stretchMillis;
            closeMinute();
        }
        if (leftMillis > 0) {
            add(leftMillis);
        }
    }

    private void sense(Sample sample) {
        if (currentSense.isImplausible(sample.shuntCounts)
                || voltageSense.isImplausible(sample.voltageCounts)) {
            // The last plausible figures stand: a garbage frame must become neither amps nor the
            // volts that prove full.
            faults.raise(Fault.COUNTS_IMPLAUSIBLE, clock.uptimeMillis());
            return;
        }
        shuntCounts = sample.shuntCounts;
        currentMicroamps = currentSense.microampsFromCounts(shuntCounts);
        if (currentSense.isClipped(shuntCounts)) {
            faults.raise(Fault.SHUNT_CLIPPED, clock.uptimeMillis());
        }
        voltageCounts = sample.voltageCounts;
        voltageMicrovolts = voltageSense.microvoltsFromCounts(voltageCounts);
        if (voltageSense.isClipped(voltageCounts)) {
            faults.raise(Fault.VOLTAGE_CLIPPED, clock.uptimeMillis());
        }
        temperatureMillicelsius = sample.temperatureMillicelsius;
    }

    private void add(int millis) {
        charge.add(currentMicroamps, millis);
        energy.add(voltageMicrovolts / MICROVOLTS_PER_MILLIVOLT, currentMicroamps, millis);
        minute.add(currentMicroamps, voltageMicrovolts, millis);
    }

    private void closeMinute() {
        minute.close();
        charge.settleMinute();
        announceLimits();
        apply(fullRule.judge(minute, temperatureMillicelsius));
        loadFilter.addMinute(minute.meanMicroamps());
        timeToEmpty.update(charge.chargeNanocoulombs(), loadFilter, trust != Trust.UNKNOWN);
    }

    private void announceLimits() {
        boolean atLimit = charge.surplusNanocoulombs() > 0 && charge.isAtUpperLimit();
        if (atLimit && !heldAtLimit && trust != Trust.UNKNOWN) {
            events.onEvent(Event.HELD_AT_LIMIT, clock.uptimeMillis(), charge.settledNanocoulombs());
        }
        heldAtLimit = atLimit;
        boolean atEmpty = charge.deficitNanocoulombs() > 0 && charge.settledNanocoulombs() == 0;
        if (atEmpty && !heldAtEmpty && trust != Trust.UNKNOWN) {
            events.onEvent(Event.HELD_AT_EMPTY, clock.uptimeMillis(), charge.deficitNanocoulombs());
        }
        heldAtEmpty = atEmpty;
    }

    /** The one place that acts on a rule's word, and announces it. */
    private void apply(RuleOutcome outcome) {
        switch (outcome) {
            case SET_TO_FULL -> {
                long step = charge.setTo(charge.capacityNanocoulombs(), true);
                trust = Trust.PROVEN;
                events.onEvent(Event.SET_TO_FULL, clock.uptimeMillis(), step);
            }
            case ARMED -> {
                charge.withdrawProof();
                events.onEvent(
                        Event.FULL_RULE_ARMED,
                        clock.uptimeMillis(),
                        fullRule.dischargedNanocoulombs());
            }
            case NONE -> {
                // nothing to do
            }
        }
    }

    /** An interval that no sample stands for: not counted, the minute under way starts again. */
    private void skip(long elapsedMillis) {
        faults.raise(
                elapsedMillis < 0 ? Fault.CLOCK_BACKWARDS : Fault.SAMPLES_MISSING,
                clock.uptimeMillis());
        charge.settleMinute();
        minute.abandon();
        fullRule.samplesMissing();
    }

    /**
     * Carries out a command between two ticks.
     *
     * @param command what is asked
     * @param argument the command's figure
     * @return one word
     */
    public CommandOutcome command(Command command, long argument) {
        if (command != Command.DECLARE_STATE_OF_CHARGE) {
            return CommandOutcome.REFUSED_NOT_OFFERED;
        }
        if (argument < 0 || argument > FULL_PARTS_PER_MILLION) {
            return CommandOutcome.REFUSED_OUT_OF_RANGE;
        }
        boolean full = argument == FULL_PARTS_PER_MILLION;
        charge.setTo(StateOfCharge.nanocoulombs(argument, charge.capacityNanocoulombs()), full);
        if (full) {
            fullRule.declareFull();
        } else {
            fullRule.declareNotFull();
        }
        trust = Trust.DECLARED;
        // What was held before the declaration is not held after it: the next time is news.
        heldAtLimit = false;
        heldAtEmpty = false;
        events.onEvent(Event.DECLARED, clock.uptimeMillis(), argument);
        timeToEmpty.update(charge.chargeNanocoulombs(), loadFilter, true);
        return CommandOutcome.DONE;
    }

    /**
     * Fills a readout with figures of one instant.
     *
     * @param readout receives them
     */
    public void read(Readout readout) {
        boolean known = trust != Trust.UNKNOWN;
        readout.stateOfChargePartsPerMillion =
                known ? stateOfChargePartsPerMillion() : Readout.NOT_KNOWN;
        readout.remainingNanocoulombs = known ? charge.chargeNanocoulombs() : 0;
        readout.fullChargeNanocoulombs = charge.capacityNanocoulombs();
        readout.currentMicroamps = currentMicroamps;
        readout.averageCurrentMicroamps = loadFilter.microamps();
        readout.voltageMicrovolts = voltageMicrovolts;
        readout.temperatureMillicelsius = temperatureMillicelsius;
        readout.timeToEmptyState = timeToEmpty.state();
        readout.timeToEmptyMinutes = timeToEmpty.minutes();
        readout.ruleState = fullRule.state();
        readout.ruleReason = fullRule.reason();
        readout.trust = trust;
        readout.faultBits = faults.presentBits();
    }

    private int stateOfChargePartsPerMillion() {
        return StateOfCharge.partsPerMillion(
                charge.chargeNanocoulombs(), charge.capacityNanocoulombs());
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
        r.set(Register.IN_NANOCOULOMBS, charge.inNanocoulombs());
        r.set(Register.OUT_NANOCOULOMBS, charge.outNanocoulombs());
        r.set(Register.MINUTE_NANOCOULOMBS, charge.minuteNanocoulombs());
        r.set(Register.MINUTE_MILLIS, minute.millis());
        r.set(Register.SETTLED_NANOCOULOMBS, charge.settledNanocoulombs());
        r.set(Register.EFFICIENCY_REMAINDER_Q16, charge.efficiencyRemainderQ16());
        r.set(Register.CHARGE_NANOCOULOMBS, charge.chargeNanocoulombs());
        r.set(Register.CAPACITY_NANOCOULOMBS, charge.capacityNanocoulombs());
        r.set(Register.SURPLUS_NANOCOULOMBS, charge.surplusNanocoulombs());
        r.set(Register.DEFICIT_NANOCOULOMBS, charge.deficitNanocoulombs());
        r.set(
                Register.STATE_OF_CHARGE_PARTS_PER_MILLION,
                trust == Trust.UNKNOWN ? Readout.NOT_KNOWN : stateOfChargePartsPerMillion());
        r.set(Register.IN_MICROJOULES, energy.inMicrojoules());
        r.set(Register.OUT_MICROJOULES, energy.outMicrojoules());
        r.set(Register.MINUTE_MEAN_MICROAMPS, minute.meanMicroamps());
        r.set(Register.MINUTE_LOWEST_MICROVOLTS, minute.lowestMicrovolts());
        r.set(Register.RULE_THRESHOLD_MICROVOLTS, fullRule.thresholdMicrovolts());
        r.set(Register.RULE_STATE, fullRule.state().ordinal());
        r.set(Register.RULE_REASON, fullRule.reason().ordinal());
        r.set(Register.RULE_HELD_MINUTES, fullRule.heldMinutes());
        r.set(Register.RULE_DISCHARGED_NANOCOULOMBS, fullRule.dischargedNanocoulombs());
        r.set(Register.FULL_COUNT, fullRule.fullCount());
        r.set(Register.FILTERED_MICROAMPS_Q8, loadFilter.microampsQ8());
        r.set(Register.TIME_TO_EMPTY_STATE, timeToEmpty.state().ordinal());
        r.set(Register.TIME_TO_EMPTY_MINUTES, timeToEmpty.minutes());
        r.set(Register.TRUST, trust.ordinal());
        r.set(Register.FAULT_BITS, faults.presentBits());
        r.set(Register.FAULT_TICKS, faults.faultTicks());
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
