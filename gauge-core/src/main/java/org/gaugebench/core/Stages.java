package org.gaugebench.core;

import org.gaugebench.core.band.StateBand;
import org.gaugebench.core.charge.ChargeAccumulator;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.estimate.EstimateInput;
import org.gaugebench.core.estimate.LoadFilter;
import org.gaugebench.core.estimate.LowChargeAlarm;
import org.gaugebench.core.estimate.RateModel;
import org.gaugebench.core.estimate.TemperatureCurve;
import org.gaugebench.core.estimate.TimeToEmpty;
import org.gaugebench.core.estimate.TimeToFull;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.rules.CapacityEstimate;
import org.gaugebench.core.rules.Diagnosis;
import org.gaugebench.core.rules.EfficiencyEstimate;
import org.gaugebench.core.rules.EmptyRule;
import org.gaugebench.core.rules.FullChargeRule;
import org.gaugebench.core.rules.RestRule;
import org.gaugebench.core.sense.CurrentSense;
import org.gaugebench.core.sense.ShuntAdjustment;
import org.gaugebench.core.sense.VoltageSense;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Everything that is derived from one set of settings, in the order in which a sample passes. A
 * change of settings builds a new set and carries the state over; nothing is patched in place.
 */
final class Stages {
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;

    private static final int MINUTES_PER_HOUR = 60;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;

    final GaugeSettings settings;
    final ShuntAdjustment adjustment;
    CurrentSense currentSense;
    final VoltageSense voltageSense;
    final ChargeAccumulator charge;
    final SelfDischarge selfDischarge;
    final MinuteMean minute = new MinuteMean();
    final StateBand band;
    final FullChargeRule fullRule;
    final EmptyRule emptyRule;
    final RestRule restRule;
    final CapacityEstimate capacity;
    final EfficiencyEstimate efficiency;
    final Diagnosis diagnosis;
    final LoadFilter loadFilter;
    final TimeToEmpty timeToEmpty;
    final TimeToFull timeToFull;
    final LowChargeAlarm lowChargeAlarm;
    final ShownFigures shown;
    final BusReadout bus;

    // State: the sums through the shunt when the band last saw them.
    private long accountedInNanocoulombs;
    private long accountedOutNanocoulombs;
    private final EstimateInput estimateInput = new EstimateInput();

    Stages(GaugeSettings settings) {
        this.settings = settings;
        long capacityNanocoulombs = settings.get(Setting.CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
        adjustment = new ShuntAdjustment(settings);
        currentSense = new CurrentSense(settings);
        voltageSense = new VoltageSense(settings);
        charge =
                new ChargeAccumulator(
                        capacityNanocoulombs,
                        settings.get(Setting.COULOMBIC_EFFICIENCY),
                        settings.get(Setting.OWN_SUPPLY));
        selfDischarge =
                new SelfDischarge(settings.get(Setting.SELF_DISCHARGE), capacityNanocoulombs);
        // The offset is in both: what is left is the current of one step (B3).
        band =
                new StateBand(
                        settings,
                        (long) currentSense.microampsFromCounts(1)
                                - currentSense.microampsFromCounts(0));
        fullRule = new FullChargeRule(settings);
        emptyRule = new EmptyRule(settings);
        restRule = new RestRule(settings);
        capacity = new CapacityEstimate(settings);
        efficiency = new EfficiencyEstimate(settings);
        diagnosis = new Diagnosis(settings);
        loadFilter =
                new LoadFilter(capacityNanocoulombs, (int) settings.get(Setting.AVERAGING_TIME));
        RateModel rateModel = rateModel(settings, capacityNanocoulombs);
        timeToEmpty =
                new TimeToEmpty(
                        settings.get(Setting.OFFSET_BOUND),
                        (int) settings.get(Setting.LONGEST_TIME) * MINUTES_PER_HOUR,
                        StateOfCharge.nanocoulombs(
                                settings.get(Setting.KEPT_BACK), capacityNanocoulombs),
                        rateModel);
        timeToFull =
                new TimeToFull(
                        capacityNanocoulombs,
                        (int) settings.get(Setting.COULOMBIC_EFFICIENCY),
                        (int) settings.get(Setting.TAPER_TIME),
                        (int) settings.get(Setting.TAPER) / 2,
                        (int) settings.get(Setting.LONGEST_TIME) * MINUTES_PER_HOUR);
        lowChargeAlarm =
                new LowChargeAlarm(
                        (int) settings.get(Setting.LOW_CHARGE),
                        (int) settings.get(Setting.LOW_CHARGE_HYSTERESIS));
        shown = new ShownFigures(settings);
        bus = new BusReadout(settings, rateModel);
    }

    private static RateModel rateModel(GaugeSettings settings, long capacityNanocoulombs) {
        TemperatureCurve temperature =
                new TemperatureCurve(
                        (int) settings.get(Setting.USABLE_AT_10),
                        (int) settings.get(Setting.USABLE_AT_0),
                        (int) settings.get(Setting.USABLE_AT_MINUS_20));
        return new RateModel(
                capacityNanocoulombs,
                (int) settings.get(Setting.RATED_TIME),
                (int) settings.get(Setting.PEUKERT_EXPONENT),
                temperature);
    }

    /** No rule decides until figures have settled. */
    void beginQuietTime() {
        fullRule.beginQuietTime();
        emptyRule.beginQuietTime();
        restRule.beginQuietTime();
    }

    /** Takes the present adjustment into the conversion; cold: once for each adjustment. */
    void adopt() {
        currentSense =
                new CurrentSense(
                        settings, adjustment.zeroCountsQ8(), adjustment.gainPartsPerMillion());
    }

    /** A stretch of time at the last sample's figures, within one minute. */
    void addStretch(LastSample last, EnergyCounter energy, int millis) {
        int microamps = last.currentMicroamps;
        int microvolts = last.voltageMicrovolts;
        charge.add(microamps, millis);
        minute.add(microamps, microvolts, millis);
        // What now and then does more than add comes last: it costs those before it no registers.
        energy.add(microvolts / MICROVOLTS_PER_MILLIVOLT, microamps, millis);
        loadFilter.addStretch(microamps, millis);
    }

    /** A stretch whose sample may be doubtful, by its faults: no evidence then (G24, C1). */
    void addChecked(LastSample last, EnergyCounter energy, int momentaryBits, int millis) {
        addStretch(last, energy, millis);
        if ((momentaryBits & FaultLog.CHARGE_HIDDEN_BITS) != 0) {
            band.addUnmeasured(millis);
        }
        if (momentaryBits != 0) {
            minute.spoil();
            capacity.spoil();
            efficiency.spoil();
        }
    }

    /** What went through the shunt since the band last saw it widens the band. */
    void account(int millis, int warmthQ8) {
        long in = charge.inNanocoulombs();
        long out = charge.outNanocoulombs();
        band.add(millis, in - accountedInNanocoulombs, out - accountedOutNanocoulombs, warmthQ8);
        markAccounted();
    }

    /** The band has seen all that went through the shunt so far. */
    void markAccounted() {
        accountedInNanocoulombs = charge.inNanocoulombs();
        accountedOutNanocoulombs = charge.outNanocoulombs();
    }

    long unaccountedNetNanocoulombs() {
        return charge.inNanocoulombs()
                - accountedInNanocoulombs
                - (charge.outNanocoulombs() - accountedOutNanocoulombs);
    }

    long unaccountedGrossNanocoulombs() {
        return charge.inNanocoulombs()
                - accountedInNanocoulombs
                + (charge.outNanocoulombs() - accountedOutNanocoulombs);
    }

    /** In and out added up, over the gauge's life; wraps: only differences of it mean anything. */
    long grossNanocoulombs() {
        return charge.inNanocoulombs() + charge.outNanocoulombs();
    }

    /** Most mean current that may flow while the gauge is without power. */
    long offMicroamps() {
        return settings.get(Setting.CAPACITY) * settings.get(Setting.OFF_CURRENT_BOUND) / 1_000;
    }

    /** Two voltages, both at rest, that one battery does not have within a short time. */
    boolean isOtherRestVoltage(
            int savedMicrovolts, int savedMicroamps, int microvolts, int microamps) {
        // derived: a hundredth of the capacity in one hour; a fortieth of the nominal voltage
        long restMicroamps = settings.get(Setting.CAPACITY) * 10;
        long differenceMicrovolts = settings.get(Setting.NOMINAL_VOLTAGE) * 1_000 / 40;
        long highestRestMicrovolts =
                settings.get(Setting.REST_VOLTAGE_100) * 1_000 + differenceMicrovolts;
        return Math.abs((long) savedMicroamps) <= restMicroamps
                && Math.abs((long) microamps) <= restMicroamps
                && savedMicrovolts > 0
                && microvolts > 0
                && savedMicrovolts <= highestRestMicrovolts
                && microvolts <= highestRestMicrovolts
                && Math.abs((long) microvolts - savedMicrovolts) > differenceMicrovolts;
    }

    /** The estimates that look at whole minutes. */
    void updateMinuteEstimates(boolean known) {
        boolean fullVoltage =
                fullRule.isOn() && minute.lowestMicrovolts() >= fullRule.thresholdMicrovolts();
        timeToFull.addMinute(
                known, charge.chargeNanocoulombs(), minute.meanMicroamps(), fullVoltage);
    }

    /** The estimates at this moment. */
    void updateEstimates(boolean known, int presentMicroamps, int temperatureMillicelsius) {
        long capacityPart = charge.capacityNanocoulombs() / 1_000_000;
        estimateInput.known = known;
        estimateInput.chargeNanocoulombs = charge.chargeNanocoulombs();
        estimateInput.lowNanocoulombs = band.lowerEdgePartsPerMillion() * capacityPart;
        estimateInput.highNanocoulombs = band.upperEdgePartsPerMillion() * capacityPart;
        estimateInput.presentMicroamps = presentMicroamps;
        estimateInput.temperatureMillicelsius = temperatureMillicelsius;
        timeToEmpty.update(estimateInput, loadFilter);
        // The low end speaks too early rather than too late; a band that says nothing says nothing.
        int alarmPartsPerMillion =
                band.isUnknown() ? stateOfChargePartsPerMillion() : band.lowerEdgePartsPerMillion();
        lowChargeAlarm.update(known ? alarmPartsPerMillion : Readout.NOT_KNOWN);
    }

    int stateOfChargePartsPerMillion() {
        return StateOfCharge.partsPerMillion(
                charge.chargeNanocoulombs(), charge.capacityNanocoulombs());
    }

    void updateBand() {
        band.update(stateOfChargePartsPerMillion(), charge.chargeNanocoulombs());
    }
}
