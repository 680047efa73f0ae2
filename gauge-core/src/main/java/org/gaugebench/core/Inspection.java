package org.gaugebench.core;

import org.gaugebench.core.band.ErrorBand;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;

/** Copies the stages' insides into the readout and into the register table. */
final class Inspection {
    private Inspection() {}

    static void read(Stages s, Corrections corrections, FaultLog faults, Readout readout) {
        boolean known = corrections.isKnown();
        readout.stateOfChargePartsPerMillion =
                known ? s.stateOfChargePartsPerMillion() : Readout.NOT_KNOWN;
        readout.lowerEdgePartsPerMillion = s.band.lowerEdgePartsPerMillion();
        readout.upperEdgePartsPerMillion = s.band.upperEdgePartsPerMillion();
        readout.bandUnknown = !known || s.band.isUnknown();
        readout.remainingNanocoulombs = known ? s.charge.chargeNanocoulombs() : 0;
        readout.fullChargeNanocoulombs = s.charge.capacityNanocoulombs();
        readout.measuredCapacityMilliampHours = s.capacity.measuredMilliampHours();
        readout.measuredEfficiencyPartsPerMillion = s.efficiency.measuredPartsPerMillion();
        readout.averageCurrentMicroamps = s.loadFilter.microamps();
        estimates(s, readout);
        readout.ruleState = s.fullRule.state();
        readout.ruleReason = s.fullRule.reason();
        readout.trust = corrections.trust();
        readout.faultBits = faults.presentBits();
        readout.trustReason = corrections.trustReason(s, readout.faultBits);
    }

    private static void estimates(Stages s, Readout readout) {
        readout.timeToEmptyState = s.timeToEmpty.state();
        readout.timeToEmptyMinutes = s.timeToEmpty.minutes();
        readout.timeToEmptyLowMinutes = s.timeToEmpty.low().minutes();
        readout.timeToEmptyHighMinutes = s.timeToEmpty.high().minutes();
        readout.timeAtThisLoadState = s.timeToEmpty.atThisLoad().state();
        readout.timeAtThisLoadMinutes = s.timeToEmpty.atThisLoad().minutes();
        readout.timeAtUsualUseState = s.timeToEmpty.atUsualUse().state();
        readout.timeAtUsualUseMinutes = s.timeToEmpty.atUsualUse().minutes();
        readout.timeToFullState = s.timeToFull.state();
        readout.timeToFullMinutes = s.timeToFull.minutes();
        readout.lowCharge = s.lowChargeAlarm.isOn();
    }

    static void inspect(
            Stages s, EnergyCounter energy, Corrections corrections, FaultLog faults, Registers r) {
        r.set(Register.IN_MICROJOULES, energy.inMicrojoules());
        r.set(Register.OUT_MICROJOULES, energy.outMicrojoules());
        r.set(
                Register.STATE_OF_CHARGE_PARTS_PER_MILLION,
                corrections.isKnown() ? s.stateOfChargePartsPerMillion() : Readout.NOT_KNOWN);
        r.set(Register.TRUST, corrections.trust().ordinal());
        r.set(Register.FAULT_BITS, faults.presentBits());
        r.set(Register.FAULT_TICKS, faults.faultTicks());
        charge(s, r);
        band(s, r);
        rules(s, r);
        estimate(s, r);
    }

    private static void charge(Stages s, Registers r) {
        r.set(Register.ZERO_ADJUSTMENT_COUNTS_Q8, s.adjustment.zeroCountsQ8());
        r.set(Register.SPAN_ADJUSTMENT_PARTS_PER_MILLION, s.adjustment.gainPartsPerMillion());
        r.set(Register.IN_NANOCOULOMBS, s.charge.inNanocoulombs());
        r.set(Register.OUT_NANOCOULOMBS, s.charge.outNanocoulombs());
        r.set(Register.MINUTE_NANOCOULOMBS, s.charge.minuteNanocoulombs());
        r.set(Register.MINUTE_MILLIS, s.minute.millis());
        r.set(Register.SETTLED_NANOCOULOMBS, s.charge.settledNanocoulombs());
        r.set(Register.EFFICIENCY_REMAINDER_Q16, s.charge.efficiencyRemainderQ16());
        r.set(Register.CHARGE_NANOCOULOMBS, s.charge.chargeNanocoulombs());
        r.set(Register.CAPACITY_NANOCOULOMBS, s.charge.capacityNanocoulombs());
        r.set(Register.SURPLUS_NANOCOULOMBS, s.charge.surplusNanocoulombs());
        r.set(Register.DEFICIT_NANOCOULOMBS, s.charge.deficitNanocoulombs());
        r.set(Register.MINUTE_MEAN_MICROAMPS, s.minute.meanMicroamps());
        r.set(Register.MINUTE_LOWEST_MICROVOLTS, s.minute.lowestMicrovolts());
    }

    private static void band(Stages s, Registers r) {
        ErrorBand sums = s.band.sums();
        r.set(Register.LOWER_EDGE_PARTS_PER_MILLION, s.band.lowerEdgePartsPerMillion());
        r.set(Register.UPPER_EDGE_PARTS_PER_MILLION, s.band.upperEdgePartsPerMillion());
        r.set(Register.BAND_RESIDUAL_PARTS_PER_MILLION, sums.residualPartsPerMillion());
        r.set(Register.BAND_MILLIS, sums.millis());
        r.set(Register.BAND_NET_NANOCOULOMBS, sums.netNanocoulombs());
        r.set(Register.BAND_GROSS_NANOCOULOMBS, sums.grossNanocoulombs());
        r.set(Register.BAND_IN_NANOCOULOMBS, sums.inNanocoulombs());
        r.set(Register.BAND_GAP_NANOCOULOMBS, sums.gapNanocoulombs());
        r.set(Register.BAND_WARM_MILLIS_Q8, sums.warmMillisQ8());
    }

    private static void rules(Stages s, Registers r) {
        r.set(Register.RULE_THRESHOLD_MICROVOLTS, s.fullRule.thresholdMicrovolts());
        r.set(Register.RULE_STATE, s.fullRule.state().ordinal());
        r.set(Register.RULE_REASON, s.fullRule.reason().ordinal());
        r.set(Register.RULE_HELD_MINUTES, s.fullRule.heldMinutes());
        r.set(Register.RULE_DISCHARGED_NANOCOULOMBS, s.fullRule.dischargedNanocoulombs());
        r.set(Register.FULL_COUNT, s.fullRule.fullCount());
        r.set(Register.RULE_STATES_SEEN, s.fullRule.statesSeen());
        r.set(Register.RULE_TRANSITIONS_SEEN, s.fullRule.transitionsSeen());
        r.set(Register.RULE_REASONS_SEEN, s.fullRule.reasonsSeen());
        r.set(Register.EMPTY_COUNT, s.emptyRule.emptyCount());
        r.set(Register.RESTED_MINUTES, s.restRule.restedMinutes());
        r.set(Register.MINUTES_SINCE_FULL, s.diagnosis.minutesSinceFull());
        r.set(Register.RESISTANCE_MICROOHMS, s.diagnosis.resistanceMicroohms());
        r.set(Register.MEASURED_CAPACITY_MILLIAMP_HOURS, s.capacity.measuredMilliampHours());
        r.set(
                Register.MEASURED_EFFICIENCY_PARTS_PER_MILLION,
                s.efficiency.measuredPartsPerMillion());
    }

    private static void estimate(Stages s, Registers r) {
        r.set(Register.FILTERED_MICROAMPS_Q8, s.loadFilter.microampsQ8());
        r.set(Register.TIME_TO_EMPTY_STATE, s.timeToEmpty.state().ordinal());
        r.set(Register.TIME_TO_EMPTY_MINUTES, s.timeToEmpty.minutes());
        r.set(Register.TIME_TO_EMPTY_LOW_MINUTES, s.timeToEmpty.low().minutes());
        r.set(Register.TIME_TO_EMPTY_HIGH_MINUTES, s.timeToEmpty.high().minutes());
        r.set(Register.TIME_AT_THIS_LOAD_MINUTES, s.timeToEmpty.atThisLoad().minutes());
        r.set(Register.TIME_AT_USUAL_USE_MINUTES, s.timeToEmpty.atUsualUse().minutes());
        r.set(Register.TIME_TO_FULL_STATE, s.timeToFull.state().ordinal());
        r.set(Register.TIME_TO_FULL_MINUTES, s.timeToFull.minutes());
        r.set(Register.LOW_CHARGE_ALARM, s.lowChargeAlarm.isOn() ? 1 : 0);
    }
}
