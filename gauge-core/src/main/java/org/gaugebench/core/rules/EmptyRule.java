package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Proves empty (the E rules of {@code docs/rules.md}): a voltage at its lower end at a small
 * current, not cold, and not shortly after a heavy load, whose sag looks the same.
 *
 * <p>If the count contradicts, nothing is set: a cold, aged or partly failed battery ends early.
 * The second such end at the same count is believed.
 */
public final class EmptyRule {
    private static final int RECOVERY_MINUTES = 5;
    private static final int LOWEST_MILLICELSIUS = 5_000;

    /** A count whose lower edge is at most 15 % does not contradict empty. */
    private static final int PLAUSIBLE_PARTS_PER_MILLION = 150_000;

    /** Two early ends agree when their counts differ by at most 5 points. */
    private static final int AGREEMENT_PARTS_PER_MILLION = 50_000;

    private static final int NO_EARLY_END_CODE = -1;

    // Parameters.
    private final long emptyMicrovolts;
    private final long smallMicroamps;
    private final long heavyMicroamps;
    private final long rearmNanocoulombs;

    // State.
    private final QuietTime quietTime;
    private boolean armed = true;
    private long chargedNanocoulombs;

    /** Starts at 0: what was drawn before the start is not known (rule E3). */
    private int lightMinutes;

    private int earlyEndPartsPerMillion = NO_EARLY_END_CODE;
    private int emptyCount;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public EmptyRule(GaugeSettings settings) {
        long capacityMilliampHours = settings.get(Setting.CAPACITY);
        quietTime = new QuietTime(settings);
        emptyMicrovolts = settings.get(Setting.EMPTY_VOLTAGE) * 1_000;
        // derived: mAh x ppm / 1000 = uA for one hour
        smallMicroamps = capacityMilliampHours * settings.get(Setting.EMPTY_CURRENT) / 1_000;
        heavyMicroamps = Math.min(capacityMilliampHours * 250, smallMicroamps);
        rearmNanocoulombs =
                StateOfCharge.nanocoulombs(
                        settings.get(Setting.REARM_DISCHARGE),
                        capacityMilliampHours * 3_600_000_000L);
    }

    /** Begins the quiet time: after a restart or a change of settings figures are settling. */
    public void beginQuietTime() {
        quietTime.begin();
    }

    /**
     * Judges one whole minute.
     *
     * <p><b>Range:</b> all comparisons in 64 bits; the sum charged is clamped to 0 to the re-arm
     * limit.
     *
     * @param minute the minute's figures
     * @param temperatureMillicelsius battery temperature, or absent: then it is taken as warm
     * @param shownPartsPerMillion the count
     * @param lowerEdgePartsPerMillion lowest state of charge that the error band allows
     * @return what the gauge shall do
     */
    public RuleOutcome judge(
            MinuteMean minute,
            int temperatureMillicelsius,
            int shownPartsPerMillion,
            int lowerEdgePartsPerMillion) {
        if (emptyMicrovolts == 0) {
            return RuleOutcome.NONE;
        }
        long dischargeMicroamps = -(long) minute.meanMicroamps();
        if (dischargeMicroamps > heavyMicroamps) {
            lightMinutes = 0;
        } else if (lightMinutes < RECOVERY_MINUTES) {
            lightMinutes++;
        }
        boolean quiet = quietTime.passMinute();
        if (!armed) {
            judgeRearm(minute);
            return RuleOutcome.NONE;
        }
        boolean atEnd =
                !quiet
                        && !minute.isDoubtful()
                        && minute.highestMicrovolts() <= emptyMicrovolts
                        && minute.lowestMicrovolts() > 0
                        && dischargeMicroamps > 0
                        && dischargeMicroamps <= smallMicroamps
                        && lightMinutes >= RECOVERY_MINUTES
                        && isWarm(temperatureMillicelsius);
        return atEnd ? end(shownPartsPerMillion, lowerEdgePartsPerMillion) : RuleOutcome.NONE;
    }

    private static boolean isWarm(int temperatureMillicelsius) {
        return temperatureMillicelsius == Sample.TEMPERATURE_ABSENT
                || temperatureMillicelsius > LOWEST_MILLICELSIUS;
    }

    private RuleOutcome end(int shownPartsPerMillion, int lowerEdgePartsPerMillion) {
        armed = false;
        chargedNanocoulombs = 0;
        boolean agrees =
                earlyEndPartsPerMillion != NO_EARLY_END_CODE
                        && Math.abs((long) earlyEndPartsPerMillion - shownPartsPerMillion)
                                <= AGREEMENT_PARTS_PER_MILLION;
        if (lowerEdgePartsPerMillion <= PLAUSIBLE_PARTS_PER_MILLION || agrees) {
            earlyEndPartsPerMillion = NO_EARLY_END_CODE;
            emptyCount++;
            return RuleOutcome.SET_TO_EMPTY;
        }
        earlyEndPartsPerMillion = shownPartsPerMillion;
        return RuleOutcome.EARLY_EMPTY;
    }

    private void judgeRearm(MinuteMean minute) {
        chargedNanocoulombs =
                FixedMath.clamp(chargedNanocoulombs + minute.nanocoulombs(), 0, rearmNanocoulombs);
        armed = chargedNanocoulombs >= rearmNanocoulombs;
    }

    /** Samples were missing: a heavy load may hide among them. */
    public void samplesMissing() {
        lightMinutes = 0;
    }

    /**
     * Empty anchors since power-up.
     *
     * @return a count
     */
    public int emptyCount() {
        return emptyCount;
    }

    /**
     * Whether the rule looks for empty.
     *
     * @return false from an end until enough was charged
     */
    public boolean isArmed() {
        return armed;
    }

    /**
     * The count at the last early end.
     *
     * @return ppm, or -1
     */
    public int earlyEndPartsPerMillion() {
        return earlyEndPartsPerMillion;
    }

    /**
     * Takes over where a rule before this one stood.
     *
     * @param wasArmed whether it looked for empty
     * @param earlyEnd its early end, ppm or -1
     */
    public void resume(boolean wasArmed, int earlyEnd) {
        armed = wasArmed;
        earlyEndPartsPerMillion = earlyEnd;
        beginQuietTime();
    }
}
