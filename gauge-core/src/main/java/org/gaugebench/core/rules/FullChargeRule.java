package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Proves full (rules G9 to G13 of {@code docs/rules.md}): the battery's voltage at the charger's
 * regulation level while the current has fallen into the taper range, for the hold time.
 *
 * <p>Judged once a minute on the whole minute's figures. The minute's <em>lowest</em> voltage must
 * reach the threshold, so a spike proves nothing; its <em>mean</em> current must lie in the taper
 * range, so a pump's short cycles do not hide a full battery.
 */
public final class FullChargeRule {
    private static final int REFERENCE_MILLICELSIUS = 25_000;
    private static final int MILLIKELVIN_PER_KELVIN = 1_000;

    /** The taper range reaches a quarter of the taper below zero: a full battery may float. */
    private static final int TAPER_FLOOR_DIVISOR = 4;

    // Parameters.
    private final boolean switchedOff;
    private final long thresholdAt25Microvolts;
    private final long microvoltsPerKelvin;
    private final long taperMicroamps;
    private final int holdMinutes;
    private final long rearmNanocoulombs;

    // State.
    private RuleState state = RuleState.WAITING;
    private RuleReason reason = RuleReason.NO_MINUTE_YET;
    private int heldMinutes;
    private long dischargedNanocoulombs;
    private int fullCount;
    private long thresholdMicrovolts;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public FullChargeRule(GaugeSettings settings) {
        long absorptionMillivolts = settings.get(Setting.ABSORPTION);
        long capacityMilliampHours = settings.get(Setting.CAPACITY);
        switchedOff = absorptionMillivolts == 0;
        thresholdAt25Microvolts =
                (absorptionMillivolts - settings.get(Setting.ABSORPTION_MARGIN)) * 1_000;
        microvoltsPerKelvin = settings.get(Setting.TEMPERATURE_COEFFICIENT);
        // derived: mAh x ppm / 1000 = uA in one hour
        taperMicroamps = capacityMilliampHours * settings.get(Setting.TAPER) / 1_000;
        holdMinutes = (int) settings.get(Setting.HOLD);
        // derived: 1 mAh = 3.6e9 nC
        rearmNanocoulombs =
                StateOfCharge.nanocoulombs(
                        settings.get(Setting.REARM_DISCHARGE),
                        capacityMilliampHours * 3_600_000_000L);
        thresholdMicrovolts = thresholdAt25Microvolts;
        if (switchedOff) {
            reason = RuleReason.SWITCHED_OFF;
        }
    }

    /**
     * Judges one whole minute.
     *
     * <p><b>Range:</b> threshold 0 to 1e8 uV plus at most 250,000 uV/K x 2.1e6 K; all sums in 64
     * bits. The discharge sum is clamped to 0 to the re-arm limit.
     *
     * @param minute the minute's figures
     * @param temperatureMillicelsius battery temperature, or absent: then 25 °C stands in
     * @return what the gauge shall do
     */
    public RuleOutcome judge(MinuteMean minute, int temperatureMillicelsius) {
        if (switchedOff) {
            return RuleOutcome.NONE;
        }
        thresholdMicrovolts = thresholdMicrovolts(temperatureMillicelsius);
        if (state == RuleState.NOT_ARMED) {
            return judgeRearm(minute);
        }
        RuleReason obstacle = obstacle(minute);
        if (obstacle != RuleReason.HOLD_RUNNING) {
            wait(obstacle);
            return RuleOutcome.NONE;
        }
        heldMinutes++;
        if (heldMinutes < holdMinutes) {
            state = RuleState.HOLDING;
            reason = RuleReason.HOLD_RUNNING;
            return RuleOutcome.NONE;
        }
        fullCount++;
        disarm();
        return RuleOutcome.SET_TO_FULL;
    }

    private long thresholdMicrovolts(int temperatureMillicelsius) {
        if (temperatureMillicelsius == Sample.TEMPERATURE_ABSENT) {
            return thresholdAt25Microvolts;
        }
        long aboveReference = (long) temperatureMillicelsius - REFERENCE_MILLICELSIUS;
        return thresholdAt25Microvolts
                + FixedMath.divideHalfAwayFromZero(
                        microvoltsPerKelvin * aboveReference, MILLIKELVIN_PER_KELVIN);
    }

    private RuleReason obstacle(MinuteMean minute) {
        if (minute.lowestMicrovolts() < thresholdMicrovolts) {
            return RuleReason.VOLTAGE_UNDER_THRESHOLD;
        }
        if (minute.meanMicroamps() > taperMicroamps) {
            return RuleReason.CURRENT_ABOVE_TAPER;
        }
        if (minute.meanMicroamps() < -taperMicroamps / TAPER_FLOOR_DIVISOR) {
            return RuleReason.CURRENT_BELOW_TAPER;
        }
        return RuleReason.HOLD_RUNNING;
    }

    private RuleOutcome judgeRearm(MinuteMean minute) {
        dischargedNanocoulombs =
                FixedMath.clamp(
                        dischargedNanocoulombs - minute.nanocoulombs(), 0, rearmNanocoulombs);
        if (dischargedNanocoulombs < rearmNanocoulombs) {
            return RuleOutcome.NONE;
        }
        wait(RuleReason.ARMED_BY_DISCHARGE);
        return RuleOutcome.ARMED;
    }

    private void wait(RuleReason why) {
        state = RuleState.WAITING;
        reason = why;
        heldMinutes = 0;
    }

    private void disarm() {
        state = RuleState.NOT_ARMED;
        reason = RuleReason.FULL_PROVEN;
        heldMinutes = 0;
        dischargedNanocoulombs = 0;
    }

    /** Somebody declared full: the rule waits for a discharge as after its own proof. */
    public void declareFull() {
        if (!switchedOff) {
            disarm();
        }
    }

    /** Somebody declared another state of charge: the rule looks for full from now. */
    public void declareNotFull() {
        if (!switchedOff) {
            wait(RuleReason.NO_MINUTE_YET);
        }
    }

    /** Samples were missing: what was held no longer counts. */
    public void samplesMissing() {
        if (!switchedOff && state == RuleState.HOLDING) {
            wait(RuleReason.SAMPLES_MISSING);
        }
    }

    /**
     * Where the rule stands.
     *
     * @return its state
     */
    public RuleState state() {
        return state;
    }

    /**
     * Why it stands there.
     *
     * @return the reason of the last judgement
     */
    public RuleReason reason() {
        return reason;
    }

    /**
     * How long voltage and current have spoken for full.
     *
     * @return whole minutes
     */
    public int heldMinutes() {
        return heldMinutes;
    }

    /**
     * Discharged since full was proven.
     *
     * @return 0 to the re-arm limit, nanocoulombs
     */
    public long dischargedNanocoulombs() {
        return dischargedNanocoulombs;
    }

    /**
     * Full anchors since power-up.
     *
     * @return a count
     */
    public int fullCount() {
        return fullCount;
    }

    /**
     * The threshold at the last judged temperature.
     *
     * @return microvolts
     */
    public long thresholdMicrovolts() {
        return thresholdMicrovolts;
    }
}
