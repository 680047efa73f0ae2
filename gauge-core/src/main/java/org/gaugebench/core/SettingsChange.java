package org.gaugebench.core;

import org.gaugebench.core.band.ErrorBand;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.settings.Setting;

/**
 * Carries the state over from one set of stages to the next when the settings change (the S rules
 * of {@code docs/rules.md}). Cold code: runs between two ticks.
 */
final class SettingsChange {
    private SettingsChange() {}

    /** Whether the new settings speak of another kind of battery: then nothing carries over. */
    static boolean isOtherBattery(Stages before, Stages after) {
        return differ(before, after, Setting.CHEMISTRY)
                || differ(before, after, Setting.NOMINAL_VOLTAGE);
    }

    private static boolean differ(Stages before, Stages after, Setting setting) {
        return before.settings.get(setting) != after.settings.get(setting);
    }

    /**
     * Carries the count, the band and the rules' standing over. Returns the step of the count.
     *
     * <p>The percentage is kept: whoever edits the capacity corrects a figure, and the charge that
     * the old figure implied was as wrong as the figure. A changed capacity widens the band by the
     * new capacity bound and drops what was measured. Everything else changes nothing
     * retroactively.
     */
    static long carryOver(Stages before, Stages after) {
        boolean sameCapacity = !differ(before, after, Setting.CAPACITY);
        long chargeBefore = before.charge.chargeNanocoulombs();
        long chargeAfter =
                sameCapacity
                        ? chargeBefore
                        : StateOfCharge.nanocoulombs(
                                before.stateOfChargePartsPerMillion(),
                                after.charge.capacityNanocoulombs());
        after.charge.resume(
                chargeAfter,
                before.charge.isFullProven(),
                before.charge.surplusNanocoulombs(),
                before.charge.deficitNanocoulombs());
        after.charge.resumeSums(
                before.charge.inNanocoulombs(),
                before.charge.outNanocoulombs(),
                before.charge.efficiencyRemainderQ16());
        carryBand(before.band.sums(), after.band.sums());
        after.band
                .sums()
                .capacityChanged(
                        before.settings.get(Setting.CAPACITY),
                        after.settings.get(Setting.CAPACITY));
        if (sameCapacity) {
            after.capacity.resume(
                    before.capacity.measuredMilliampHours(),
                    before.capacity.candidateMilliampHours());
            after.efficiency.resume(
                    before.efficiency.measuredPartsPerMillion(),
                    before.efficiency.candidatePartsPerMillion());
        } else if (after.band.sums().residualPartsPerMillion()
                < ErrorBand.WHOLE_PARTS_PER_MILLION) {
            after.band.sums().widen(after.settings.get(Setting.CAPACITY_BOUND));
        }
        after.fullRule.takeOver(before.fullRule);
        after.emptyRule.resume(
                before.emptyRule.isArmed(), before.emptyRule.earlyEndPartsPerMillion());
        carryAdjustment(before, after);
        after.diagnosis.takeOver(before.diagnosis);
        return after.charge.chargeNanocoulombs() - chargeBefore;
    }

    /** The adjustment belongs to the converter, whatever battery hangs on it. */
    static void carryAdjustment(Stages before, Stages after) {
        if (!differ(before, after, Setting.SHUNT_CONVERTER_BITS)
                && !differ(before, after, Setting.SHUNT_FULL_SCALE)) {
            after.adjustment.resume(
                    before.adjustment.zeroCountsQ8(), before.adjustment.gainPartsPerMillion());
            after.adopt();
        }
    }

    private static void carryBand(ErrorBand before, ErrorBand after) {
        after.resume(
                before.residualPartsPerMillion(),
                before.millis(),
                before.netNanocoulombs(),
                before.grossNanocoulombs(),
                before.inNanocoulombs(),
                before.gapNanocoulombs(),
                before.warmMillisQ8());
    }
}
