package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Works out the coulombic efficiency from full to full (the C rules of {@code docs/rules.md}): what
 * came out over what went in, if the cycle is fit for use as evidence.
 *
 * <p>A leak looks exactly like a poor efficiency: 12 mA past the shunt turn 99.5 % into 97.4 % in
 * three days. So a cycle may last three days at most, and what may have passed unseen in that time
 * must stay under a quarter of what the result is made of.
 */
public final class EfficiencyEstimate {
    private static final int LONGEST_MINUTES = 3 * 24 * 60;
    private static final int MINUTE_MILLIS = 60_000;

    /** At least 30 % of the capacity must have gone out. */
    private static final int SHALLOWEST_PERCENT = 30;

    private static final int UNSEEN_DIVISOR = 4;

    // Parameters.
    private final boolean switchedOff;
    private final long capacityNanocoulombs;
    private final long unseenMicroamps;
    private final MeasuredValue measuredPartsPerMillion;

    // State: the cycle since the last full anchor that is evidence.
    private boolean fit;
    private int minutes;
    private long inNanocoulombs;
    private long outNanocoulombs;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public EfficiencyEstimate(GaugeSettings settings) {
        switchedOff = settings.get(Setting.MEASURE_EFFICIENCY) == 0;
        capacityNanocoulombs = settings.get(Setting.CAPACITY) * 3_600_000_000L;
        unseenMicroamps =
                settings.get(Setting.OFFSET_BOUND) + settings.get(Setting.UNMEASURED_BOUND);
        long chemistry = settings.get(Setting.CHEMISTRY);
        boolean lithium =
                chemistry == ChemistryPreset.LIFEPO4.code()
                        || chemistry == ChemistryPreset.NMC.code();
        measuredPartsPerMillion =
                new MeasuredValue(
                        settings.get(Setting.COULOMBIC_EFFICIENCY),
                        lithium ? 970_000 : 800_000,
                        lithium ? 1_000_000 : 980_000,
                        10_000,
                        20_000);
    }

    /**
     * A minute of the cycle.
     *
     * <p><b>Range:</b> 2^47 nC a minute over 4,320 minutes below 2^60.
     *
     * @param minute its figures
     * @param keptFull whether a charger keeps a full battery full: what it gives goes into gas and
     *     self-discharge and never comes out, so the cycle has not begun; as of the minute before,
     *     so the first minute of a discharge counts
     */
    public void addMinute(MinuteMean minute, boolean keptFull) {
        if (!fit) {
            return;
        }
        long net = minute.nanocoulombs();
        if (keptFull && net > 0) {
            begin();
            return;
        }
        minutes++;
        if (net > 0) {
            inNanocoulombs += net;
        } else {
            outNanocoulombs -= net;
        }
        if (minutes > LONGEST_MINUTES) {
            fit = false;
        }
    }

    /** Something happened that makes this cycle unfit. */
    public void spoil() {
        fit = false;
    }

    /**
     * Full was proven or declared: ends one cycle and begins the next.
     *
     * <p><b>Range:</b> the quotient is formed as out / (in / 1e6).
     *
     * @param evidence whether the proof is fit for use as evidence
     * @return whether the measured efficiency moved
     */
    public boolean full(boolean evidence) {
        boolean moved =
                fit && evidence && isDeep() && isClear() && measuredPartsPerMillion.offer(result());
        fit = evidence && !switchedOff;
        begin();
        return moved;
    }

    private void begin() {
        minutes = 0;
        inNanocoulombs = 0;
        outNanocoulombs = 0;
    }

    private boolean isDeep() {
        return outNanocoulombs >= capacityNanocoulombs / 100 * SHALLOWEST_PERCENT
                && inNanocoulombs > 1_000_000;
    }

    private boolean isClear() {
        long unseen = unseenMicroamps * minutes * MINUTE_MILLIS;
        return unseen < (inNanocoulombs - outNanocoulombs) / UNSEEN_DIVISOR;
    }

    private long result() {
        return outNanocoulombs / (inNanocoulombs / 1_000_000);
    }

    /** Drops what was measured. */
    public void forget() {
        measuredPartsPerMillion.forget();
        fit = false;
    }

    /**
     * Takes over what was saved; the cycle under way does not survive a restart.
     *
     * @param saved measured efficiency in ppm, 0 for none
     * @param savedCandidate last result in ppm, 0 for none
     */
    public void resume(long saved, long savedCandidate) {
        measuredPartsPerMillion.resume(saved, savedCandidate);
        fit = false;
    }

    /**
     * The measured efficiency.
     *
     * @return ppm, or 0 while there is none
     */
    public long measuredPartsPerMillion() {
        return measuredPartsPerMillion.measured();
    }

    /**
     * The last single result.
     *
     * @return ppm, or 0
     */
    public long candidatePartsPerMillion() {
        return measuredPartsPerMillion.candidate();
    }
}
