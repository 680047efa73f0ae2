package org.gaugebench.sim.device.exhibits;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeCheck;
import org.gaugebench.sim.scenario.MistakeFamily;
import org.jspecify.annotations.Nullable;

/**
 * A counting gauge that makes named mistakes and no others: without any it is {@link PlainCounter}
 * to the last bit. A sample passes clock, gap, reading, weight, accumulator and limits, then the
 * rules that may set the count; each stage is its own small class.
 *
 * <p>Without the mistakes of {@link MistakeFamily#FULL}, {@link MistakeFamily#EMPTY} and {@link
 * MistakeFamily#HOURS} it has no full rule, no empty rule and no hours. Like the plain counter it
 * carries its count over a restart, unless it makes a mistake of saving; it then knows what its
 * memory kept.
 *
 * <p>Of other settings it takes capacity and coulombic efficiency while it counts. Its rules keep
 * the limits with which they were built.
 */
public final class ExhibitGauge implements GaugeDevice {
    // Stages, in the order in which a sample passes.
    private final CountScale scale;
    private final Clock clock;
    private final GapRule gap;
    private final Sense sense;
    private final Weighing weighing;
    private final Accumulator accumulator;
    private final Limits limits;
    private final StartBelief startBelief;
    private final FullWatch full;
    private final EmptyByVolts empty;
    private final CapacityByVolts capacity;
    private final HoursFilter hoursFilter;
    private final LastSample last;
    private final ExhibitFigures figures;
    private final EventSink events;
    private final CapacityEdit edit;
    private final @Nullable OneSlot slot;
    private final long saveStepCountMillis;
    private final boolean jumps;

    // State.
    private long declaredMilliampHours;
    private long efficiencyPartsPerMillion;
    private long savedCountMillis;
    private boolean unsaved;
    private boolean started;
    private int lastCounts;
    private double capacityNanocoulombs;
    private long capacityCountMillis;

    /**
     * Builds a gauge.
     *
     * @param settings of the sensor, the battery and the rules; a mistake uses those that it names
     * @param mistakes any set that {@link MistakeCheck} has nothing against; empty for none
     * @param nominalTickMillis interval at which samples are meant to come, at least 1
     * @param store what it saves into; used by a mistake of saving only
     * @param events is told when the count is set to full or empty and when a capacity is learned
     * @throws IllegalArgumentException for a set that makes no sense, with the check's sentences;
     *     readers of files ask the check first
     */
    public ExhibitGauge(
            GaugeSettings settings,
            Set<Mistake> mistakes,
            int nominalTickMillis,
            StateStore store,
            EventSink events) {
        List<String> problems = MistakeCheck.problems(mistakes);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
        Set<Mistake> made = EnumSet.noneOf(Mistake.class);
        made.addAll(mistakes);
        this.events = events;
        scale = new CountScale(settings);
        clock = Clock.of(made, nominalTickMillis);
        gap = GapRule.of(made, nominalTickMillis);
        sense = Sense.of(made, settings, scale);
        weighing = new Weighing(made, settings, scale);
        accumulator = accumulator(made, settings, scale);
        limits = new Limits(made);
        VoltageTable table = new VoltageTable(settings);
        startBelief = StartBelief.of(made, table);
        edit = CapacityEdit.of(made);
        slot = made.contains(Mistake.SAVE_BY_OVERWRITE) ? new OneSlot(store) : null;
        declaredMilliampHours = settings.get(Setting.CAPACITY);
        efficiencyPartsPerMillion = settings.get(Setting.COULOMBIC_EFFICIENCY);
        capacityNanocoulombs = declaredMilliampHours * CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR;
        capacityCountMillis = scale.countMillis(capacityNanocoulombs);
        saveStepCountMillis =
                StrictMath.round(capacityCountMillis * (settings.get(Setting.SAVE_STEP) / 1e6));
        full =
                new FullWatch(
                        FullRule.of(made, settings),
                        !made.contains(Mistake.NO_REARM),
                        StrictMath.round(
                                capacityCountMillis
                                        * (settings.get(Setting.REARM_DISCHARGE) / 1e6)));
        empty =
                new EmptyByVolts(
                        made.contains(Mistake.EMPTY_BY_VOLTS_ALONE),
                        settings.get(Setting.EMPTY_VOLTAGE));
        capacity =
                new CapacityByVolts(
                        made.contains(Mistake.CAPACITY_FROM_ANY_TWO_VOLTAGES),
                        table,
                        capacityCountMillis);
        hoursFilter = HoursFilter.of(made);
        last = new LastSample(scale);
        HoursFigure hours = new HoursFigure(made, settings);
        figures = new ExhibitFigures(scale, hours);
        jumps = hours.isOffered() || made.stream().anyMatch(Mistake::jumpsUntold);
    }

    private static Accumulator accumulator(
            Set<Mistake> mistakes, GaugeSettings settings, CountScale scale) {
        if (mistakes.contains(Mistake.FLOAT_ACCUMULATOR)) {
            return new FloatAccumulator(scale);
        }
        if (mistakes.contains(Mistake.OVERFLOW_32_BIT)) {
            return new WrappingAccumulator(scale);
        }
        if (mistakes.contains(Mistake.TRUNCATE_EACH_TICK)) {
            return new TruncatingAccumulator(scale);
        }
        if (mistakes.contains(Mistake.LOST_SIGN)) {
            return new LostSignAccumulator();
        }
        if (mistakes.contains(Mistake.EFFICIENCY_ON_TOTALS)) {
            return new TotalsAccumulator(settings.get(Setting.COULOMBIC_EFFICIENCY));
        }
        return new ExactAccumulator();
    }

    @Override
    public void powerUp(long offMillis, OffTime offTime) {
        started = false;
        if (slot != null) {
            restore(slot);
        }
    }

    private void restore(OneSlot from) {
        long kept = from.read();
        savedCountMillis = kept;
        accumulator.set(kept == OneSlot.NOTHING ? 0 : kept);
        if (kept == OneSlot.NOTHING) {
            figures.forget();
        } else {
            figures.declared();
            announce(Event.RESTORED, StrictMath.round(1e6 * kept / capacityCountMillis));
        }
    }

    private void saveIfDue(OneSlot to) {
        long count = accumulator.countMillis();
        boolean moved = Math.abs(count - savedCountMillis) >= saveStepCountMillis;
        if (figures.isKnown() && (unsaved || moved)) {
            unsaved = false;
            savedCountMillis = count;
            to.write(count);
        }
    }

    @Override
    public void tick(Sample sample) {
        long elapsedMillis = clock.elapsedMillis(sample.clockMillis, last.clockMillis());
        int counts = sense.counts(sample.shuntCounts);
        last.take(sample);
        if (started) {
            last.pass(elapsedMillis);
            count(gap.counts(counts, lastCounts, elapsedMillis), elapsedMillis);
        } else {
            started = true;
            hoursFilter.add(scale.microamps(counts), 0);
            believe(startBelief.partAt(last.microvolts()));
        }
        lastCounts = counts;
        if (slot != null) {
            saveIfDue(slot);
        }
    }

    private void count(int counts, long millis) {
        long weighed = weighing.countMillis(counts, millis);
        accumulator.add(weighed);
        limits.apply(accumulator, capacityCountMillis);
        double microamps = scale.microamps(counts);
        hoursFilter.add(microamps, millis);
        int microvolts = last.microvolts();
        learn(capacity.learned(microvolts, weighed));
        if (full.fires(microvolts, microamps, millis, weighed)) {
            announce(Event.SET_TO_FULL, setTo(capacityCountMillis));
            figures.full();
        }
        if (empty.fires(microvolts)) {
            announce(Event.SET_TO_EMPTY, setTo(0));
            figures.empty();
        }
    }

    private void believe(double part) {
        if (part != StartBelief.NOTHING_NEW) {
            accumulator.set(StrictMath.round(capacityCountMillis * part));
            figures.declared();
        }
    }

    private void learn(long newCapacityCountMillis) {
        if (newCapacityCountMillis > 0) {
            capacityCountMillis = newCapacityCountMillis;
            capacityNanocoulombs = scale.nanocoulombs(newCapacityCountMillis);
            announce(Event.CAPACITY_MEASURED, figures.learned(capacityNanocoulombs));
        }
    }

    /** Sets the count and gives the step in nanocoulombs. */
    private long setTo(long countMillis) {
        long before = accumulator.countMillis();
        accumulator.set(countMillis);
        return StrictMath.round(scale.nanocoulombs(countMillis - before));
    }

    private void announce(Event event, long value) {
        events.onEvent(event, last.uptimeMillis(), value);
    }

    @Override
    public CommandOutcome command(Command command, long argument) {
        if (command != Command.DECLARE_STATE_OF_CHARGE) {
            return CommandOutcome.REFUSED_NOT_OFFERED;
        }
        accumulator.set(scale.countMillis(capacityNanocoulombs * argument / 1e6));
        figures.declared();
        unsaved = true;
        return CommandOutcome.DONE;
    }

    /** Takes capacity and coulombic efficiency, and nothing else. */
    @Override
    public CommandOutcome changeSettings(GaugeSettings settings) {
        long milliampHours = settings.get(Setting.CAPACITY);
        long partsPerMillion = settings.get(Setting.COULOMBIC_EFFICIENCY);
        if (milliampHours == declaredMilliampHours
                && partsPerMillion == efficiencyPartsPerMillion) {
            return CommandOutcome.DONE;
        }
        long before = accumulator.countMillis();
        if (milliampHours != declaredMilliampHours) {
            declaredMilliampHours = milliampHours;
            changeCapacity(milliampHours * CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR);
        }
        efficiencyPartsPerMillion = partsPerMillion;
        weighing.changeEfficiency(partsPerMillion);
        accumulator.changeEfficiency(partsPerMillion);
        limits.apply(accumulator, capacityCountMillis);
        long step = accumulator.countMillis() - before;
        announce(Event.SETTINGS_CHANGED, StrictMath.round(scale.nanocoulombs(step)));
        unsaved = true;
        return CommandOutcome.DONE;
    }

    private void changeCapacity(double nanocoulombs) {
        long old = capacityCountMillis;
        capacityNanocoulombs = nanocoulombs;
        capacityCountMillis = scale.countMillis(nanocoulombs);
        accumulator.set(edit.countMillis(accumulator.countMillis(), old, capacityCountMillis));
    }

    private void updateFigures() {
        figures.update(
                limits.shown(accumulator.countMillis(), capacityCountMillis),
                capacityCountMillis,
                capacityNanocoulombs,
                scale.microamps(lastCounts),
                hoursFilter.microamps());
    }

    /** With some mistakes the count may jump in any tick, and with others the hours. */
    @Override
    public void readSample(Readout readout) {
        last.read(readout);
        readout.currentMicroamps = scale.wholeMicroamps(scale.microamps(lastCounts));
        if (jumps) {
            figures.readJumping(
                    readout,
                    limits.shown(accumulator.countMillis(), capacityCountMillis),
                    capacityCountMillis,
                    hoursFilter.microamps());
        }
    }

    @Override
    public void read(Readout readout) {
        updateFigures();
        last.read(readout);
        figures.read(readout);
    }

    @Override
    public void inspect(Registers registers) {
        updateFigures();
        last.inspect(registers);
        figures.inspect(registers);
    }
}
