package org.gaugebench.core;

import org.gaugebench.core.band.ErrorBand;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.saved.SaveOutcome;
import org.gaugebench.core.saved.SaveReason;
import org.gaugebench.core.saved.SaveSchedule;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.saved.SlotRing;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * What the gauge keeps over a power cut: captures the stages into a record, restores them from one,
 * and knows when a save is due.
 */
final class GaugeMemory {
    private static final Trust[] TRUSTS = Trust.values();
    private static final int LOST_STEP_COUNT = 2;

    // Parameters.
    private final boolean keeps;
    private final SlotRing ring;

    // State.
    private final SavedState state = new SavedState();
    private SaveSchedule schedule;
    private SlotOutcome found = SlotOutcome.NONE_VALID;
    private long uptimeBeforeMillis;
    private long savesCount;

    GaugeMemory(StateStore store, GaugeSettings settings) {
        keeps = store.slots() > 0;
        ring = new SlotRing(store, mark(settings));
        schedule = scheduleOf(settings);
    }

    private static SettingsMark mark(GaugeSettings settings) {
        return new SettingsMark(
                settings.fingerprint(),
                (int) settings.get(Setting.CHEMISTRY),
                (int) settings.get(Setting.NOMINAL_VOLTAGE));
    }

    private static SaveSchedule scheduleOf(GaugeSettings settings) {
        return new SaveSchedule(
                settings.get(Setting.CAPACITY) * 3_600_000_000L,
                (int) settings.get(Setting.SAVE_STEP),
                (int) settings.get(Setting.NOMINAL_VOLTAGE));
    }

    /** Reads the newest record; NONE_VALID without a store. Writes nothing. */
    SlotOutcome open() {
        uptimeBeforeMillis = 0;
        savesCount = 0;
        found = keeps ? ring.open(state) : SlotOutcome.NONE_VALID;
        return found;
    }

    /** Whether there are bytes where a record should be and none checks. */
    boolean isLost() {
        return keeps && found == SlotOutcome.NONE_VALID && ring.damagedSlots() > 0;
    }

    /**
     * Puts the record that {@link #open} found into the stages. Under other settings the percentage
     * is kept; the adjustment belongs to the converter and stays. Capturing the stages after this
     * gives the same record again.
     *
     * @return by how much the count moved to keep the percentage, nanocoulombs
     */
    long restore(Stages s, EnergyCounter energy, Corrections corrections) {
        boolean sameCapacity = state.capacityNanocoulombs == s.charge.capacityNanocoulombs();
        long charge =
                sameCapacity
                        ? state.chargeNanocoulombs
                        : StateOfCharge.nanocoulombs(
                                StateOfCharge.partsPerMillion(
                                        state.chargeNanocoulombs, state.capacityNanocoulombs),
                                s.charge.capacityNanocoulombs());
        s.charge.resume(
                charge, state.fullProven, state.surplusNanocoulombs, state.deficitNanocoulombs);
        s.charge.resumeSums(
                state.lifetimeInNanocoulombs,
                state.lifetimeOutNanocoulombs,
                state.efficiencyRemainderQ16);
        energy.resume(state.lifetimeInMicrojoules, state.lifetimeOutMicrojoules);
        uptimeBeforeMillis = state.lifetimeUptimeMillis;
        restoreBand(s.band.sums());
        // derived: 1 mAh = 3.6e9 nC
        s.band.sums()
                .capacityChanged(
                        state.capacityNanocoulombs / 3_600_000_000L,
                        s.settings.get(Setting.CAPACITY));
        s.fullRule.resume(state.ruleArmed, state.ruleDischargedNanocoulombs, state.fullCount);
        s.emptyRule.resume(state.emptyArmed, state.earlyEndPartsPerMillion);
        if (sameCapacity) {
            s.capacity.resume(
                    state.measuredCapacityMilliampHours, state.evidenceCapacityMilliampHours);
            s.efficiency.resume(
                    state.measuredEfficiencyPartsPerMillion,
                    state.evidenceEfficiencyPartsPerMillion);
        }
        s.diagnosis.resume(state.sinceFullMinutes);
        s.adjustment.resume(state.zeroAdjustmentCountsQ8, state.spanAdjustmentPartsPerMillion);
        s.adopt();
        corrections.resume(TRUSTS[state.trustCode]);
        return s.charge.chargeNanocoulombs() - state.chargeNanocoulombs;
    }

    /**
     * What the record cannot know widens the band: up to a save step moved before power went, two
     * where a slot holds bytes that do not check; under other settings the capacity may be another.
     */
    void widenRestored(Stages s) {
        long steps = ring.damagedSlots() > 0 ? LOST_STEP_COUNT : 1;
        s.band.sums().widen(steps * s.settings.get(Setting.SAVE_STEP));
        if (found == SlotOutcome.FOREIGN_SETTINGS) {
            s.band.sums().widen(s.settings.get(Setting.CAPACITY_BOUND));
        }
    }

    /** The stages stand as after power-up: what they hold is what the memory holds. */
    void begin(Stages s) {
        schedule.powerUp(s.charge.chargeNanocoulombs(), s.grossNanocoulombs());
    }

    private void restoreBand(ErrorBand sums) {
        sums.resume(
                state.bandResidualPartsPerMillion,
                state.bandMillis,
                state.bandNetNanocoulombs,
                state.bandGrossNanocoulombs,
                state.bandChargeInNanocoulombs,
                state.bandGapNanocoulombs,
                state.bandWarmMillisQ8);
    }

    /** Asks, once a tick, whether to save. */
    SaveReason due(Stages s, int voltageMicrovolts, int elapsedMillis) {
        if (!keeps) {
            return SaveReason.NONE;
        }
        return schedule.due(
                s.charge.chargeNanocoulombs(),
                s.grossNanocoulombs(),
                voltageMicrovolts,
                elapsedMillis);
    }

    /** Writes a record; the answer says whether the memory took it. */
    SaveOutcome save(
            Stages s,
            EnergyCounter energy,
            Corrections corrections,
            long uptimeMillis,
            LastSample last) {
        capture(s, energy, corrections, uptimeMillis);
        captureBand(s, SelfDischarge.warmthQ8(last.temperatureMillicelsius));
        state.voltageMicrovolts = last.voltageMicrovolts;
        state.currentMicroamps = last.currentMicroamps;
        SaveOutcome outcome = ring.save(state);
        savesCount++;
        schedule.attempted(s.charge.chargeNanocoulombs(), s.grossNanocoulombs());
        return outcome;
    }

    /** Copies the stages into the record; the minute under way is part of it. */
    private void capture(
            Stages s, EnergyCounter energy, Corrections corrections, long uptimeMillis) {
        state.chargeNanocoulombs = s.charge.chargeNanocoulombs();
        state.capacityNanocoulombs = s.charge.capacityNanocoulombs();
        state.surplusNanocoulombs = s.charge.surplusNanocoulombs();
        state.deficitNanocoulombs = s.charge.deficitNanocoulombs();
        state.efficiencyRemainderQ16 = s.charge.efficiencyRemainderQ16();
        state.lifetimeInNanocoulombs = s.charge.inNanocoulombs();
        state.lifetimeOutNanocoulombs = s.charge.outNanocoulombs();
        state.lifetimeInMicrojoules = energy.inMicrojoules();
        state.lifetimeOutMicrojoules = energy.outMicrojoules();
        // Saturates, so that it stays within its range (M7).
        state.lifetimeUptimeMillis =
                uptimeBeforeMillis + Math.min(uptimeMillis, Long.MAX_VALUE - uptimeBeforeMillis);
        state.fullProven = s.charge.isFullProven();
        captureRules(s);
        state.zeroAdjustmentCountsQ8 = s.adjustment.zeroCountsQ8();
        state.spanAdjustmentPartsPerMillion = s.adjustment.gainPartsPerMillion();
        state.trustCode = corrections.trust().ordinal();
    }

    private void captureBand(Stages s, int warmthQ8) {
        // Adding the minute under way saturates where the band itself does (M7).
        ErrorBand sums = s.band.sums();
        long net = s.unaccountedNetNanocoulombs();
        state.bandResidualPartsPerMillion = sums.residualPartsPerMillion();
        state.bandMillis =
                Math.min(sums.millis() + s.minute.millis(), SavedField.BAND_MILLIS.highest());
        state.bandNetNanocoulombs = FixedMath.saturatingAdd(sums.netNanocoulombs(), net);
        state.bandGrossNanocoulombs =
                FixedMath.saturatingAdd(sums.grossNanocoulombs(), s.unaccountedGrossNanocoulombs());
        state.bandChargeInNanocoulombs =
                FixedMath.saturatingAdd(sums.inNanocoulombs(), Math.max(net, 0));
        state.bandGapNanocoulombs = sums.gapNanocoulombs();
        state.bandWarmMillisQ8 =
                Math.min(
                        sums.warmMillisQ8() + (long) s.minute.millis() * warmthQ8,
                        SavedField.BAND_WARM_MILLIS_Q8.highest());
    }

    private void captureRules(Stages s) {
        state.ruleArmed = s.fullRule.isArmed();
        // What armed the rule is used up: an armed one restored from the record holds 0 too.
        state.ruleDischargedNanocoulombs =
                s.fullRule.isArmed() ? 0 : s.fullRule.dischargedNanocoulombs();
        state.fullCount = s.fullRule.fullCount();
        state.emptyArmed = s.emptyRule.isArmed();
        state.earlyEndPartsPerMillion = s.emptyRule.earlyEndPartsPerMillion();
        state.measuredCapacityMilliampHours = (int) s.capacity.measuredMilliampHours();
        state.evidenceCapacityMilliampHours = (int) s.capacity.candidateMilliampHours();
        state.measuredEfficiencyPartsPerMillion = (int) s.efficiency.measuredPartsPerMillion();
        state.evidenceEfficiencyPartsPerMillion = (int) s.efficiency.candidatePartsPerMillion();
        state.sinceFullMinutes = s.diagnosis.minutesSinceFull();
    }

    void anchored() {
        schedule.anchored();
    }

    /** Other settings: another mark, another step, and a save at once. */
    void settingsChanged(Stages s) {
        ring.changeSettings(mark(s.settings));
        schedule = scheduleOf(s.settings);
        schedule.powerUp(s.charge.chargeNanocoulombs(), s.grossNanocoulombs());
        schedule.settingsChanged();
    }

    /** Battery voltage in the record that was restored. */
    int savedMicrovolts() {
        return state.voltageMicrovolts;
    }

    /** Current in the record that was restored. */
    int savedMicroamps() {
        return state.currentMicroamps;
    }

    /** Saves tried since power-up. */
    long saves() {
        return savesCount;
    }
}
