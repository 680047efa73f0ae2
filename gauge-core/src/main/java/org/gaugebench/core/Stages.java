package org.gaugebench.core;

import org.gaugebench.core.band.StateBand;
import org.gaugebench.core.charge.ChargeAccumulator;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.estimate.LoadFilter;
import org.gaugebench.core.estimate.TimeToEmpty;
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
    final LoadFilter loadFilter = new LoadFilter();
    final TimeToEmpty timeToEmpty;

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
        band = new StateBand(settings, currentSense.microampsFromCounts(1));
        fullRule = new FullChargeRule(settings);
        emptyRule = new EmptyRule(settings);
        restRule = new RestRule(settings);
        capacity = new CapacityEstimate(settings);
        efficiency = new EfficiencyEstimate(settings);
        diagnosis = new Diagnosis(settings);
        timeToEmpty = new TimeToEmpty(settings);
    }

    /** Takes the present adjustment into the conversion; cold: once for each adjustment. */
    void adopt() {
        currentSense =
                new CurrentSense(
                        settings, adjustment.zeroCountsQ8(), adjustment.gainPartsPerMillion());
    }

    int stateOfChargePartsPerMillion() {
        return StateOfCharge.partsPerMillion(
                charge.chargeNanocoulombs(), charge.capacityNanocoulombs());
    }

    void updateBand() {
        band.update(stateOfChargePartsPerMillion(), charge.chargeNanocoulombs());
    }
}
