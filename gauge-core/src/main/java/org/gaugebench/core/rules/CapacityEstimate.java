package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Works out the capacity from a discharge that began at a proven full and ended at the empty
 * voltage (the C rules of {@code docs/rules.md}), if the cycle is fit for use as evidence: at least
 * half the capacity, at most three days, 15 to 35 °C, on average no faster than in five hours, no
 * gap and nothing clipped, and anchors of at most 3 %.
 *
 * <p>Only discharges count: a charge would bring the efficiency's uncertainty with it.
 */
public final class CapacityEstimate {
    private static final int LONGEST_MINUTES = 3 * 24 * 60;
    private static final int LOWEST_MILLICELSIUS = 15_000;
    private static final int HIGHEST_MILLICELSIUS = 35_000;

    /** 3 % at either end over half the capacity are 8.5 % already. */
    private static final int LARGEST_RESIDUAL_PARTS_PER_MILLION = 30_000;

    private static final int FASTEST_HOURS = 5;
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;
    private static final int MINUTES_PER_HOUR = 60;

    // Parameters.
    private final boolean switchedOff;
    private final long declaredMilliampHours;
    private final long emptyPartsPerMillion;
    private final MeasuredValue measuredMilliampHours;

    // State: the cycle since the last full anchor that is evidence.
    private boolean fit;
    private int minutes;
    private long outNanocoulombs;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public CapacityEstimate(GaugeSettings settings) {
        declaredMilliampHours = settings.get(Setting.CAPACITY);
        switchedOff =
                settings.get(Setting.MEASURE_CAPACITY) == 0
                        || settings.get(Setting.FULL_RESIDUAL) > LARGEST_RESIDUAL_PARTS_PER_MILLION
                        || settings.get(Setting.EMPTY_RESIDUAL)
                                > LARGEST_RESIDUAL_PARTS_PER_MILLION;
        emptyPartsPerMillion = settings.get(Setting.EMPTY_STATE);
        measuredMilliampHours =
                new MeasuredValue(
                        declaredMilliampHours,
                        declaredMilliampHours / 2,
                        declaredMilliampHours + declaredMilliampHours / 10,
                        declaredMilliampHours / 20,
                        declaredMilliampHours / 20);
    }

    /**
     * Full was proven or declared.
     *
     * @param evidence whether the proof is fit for use as evidence
     */
    public void full(boolean evidence) {
        fit = evidence && !switchedOff;
        minutes = 0;
        outNanocoulombs = 0;
    }

    /** Something happened that makes this cycle unfit: a gap, a clipped sample, a correction. */
    public void spoil() {
        fit = false;
    }

    /**
     * A minute of the cycle.
     *
     * <p><b>Range:</b> 2^47 nC a minute over 4,320 minutes below 2^60.
     *
     * @param minute its figures
     * @param temperatureMillicelsius battery temperature, or absent
     */
    public void addMinute(MinuteMean minute, int temperatureMillicelsius) {
        if (!fit) {
            return;
        }
        minutes++;
        outNanocoulombs -= minute.nanocoulombs();
        boolean mild =
                temperatureMillicelsius == Sample.TEMPERATURE_ABSENT
                        || (temperatureMillicelsius >= LOWEST_MILLICELSIUS
                                && temperatureMillicelsius <= HIGHEST_MILLICELSIUS);
        if (!mild || minutes > LONGEST_MINUTES) {
            fit = false;
        }
    }

    /**
     * The battery reached its empty voltage, whatever the count said.
     *
     * <p><b>Range:</b> outNanocoulombs / 3.6e9 below 2^29 mAh, x 1e6 below 2^49.
     *
     * @return whether the measured capacity moved
     */
    public boolean empty() {
        boolean usable = fit && minutes > 0;
        fit = false;
        if (!usable) {
            return false;
        }
        long outMilliampHours = outNanocoulombs / NANOCOULOMBS_PER_MILLIAMP_HOUR;
        boolean deep = outMilliampHours >= declaredMilliampHours / 2;
        boolean slow =
                outMilliampHours * MINUTES_PER_HOUR * FASTEST_HOURS
                        <= declaredMilliampHours * minutes;
        if (!deep || !slow) {
            return false;
        }
        return measuredMilliampHours.offer(
                outMilliampHours * 1_000_000 / (1_000_000 - emptyPartsPerMillion));
    }

    /** Drops what was measured. */
    public void forget() {
        measuredMilliampHours.forget();
        fit = false;
    }

    /**
     * Takes over what was saved; the cycle under way does not survive a restart.
     *
     * @param saved measured capacity in mAh, 0 for none
     * @param savedCandidate last result in mAh, 0 for none
     */
    public void resume(long saved, long savedCandidate) {
        measuredMilliampHours.resume(saved, savedCandidate);
        fit = false;
    }

    /**
     * The measured capacity.
     *
     * @return mAh, or 0 while there is none
     */
    public long measuredMilliampHours() {
        return measuredMilliampHours.measured();
    }

    /**
     * The last single result.
     *
     * @return mAh, or 0
     */
    public long candidateMilliampHours() {
        return measuredMilliampHours.candidate();
    }

    /**
     * Whether the cycle under way is still fit for use as evidence.
     *
     * @return true from a full anchor until something spoils it
     */
    public boolean isFit() {
        return fit;
    }
}
