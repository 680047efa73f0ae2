package org.gaugebench.core.rules;

import org.gaugebench.core.band.AnchorResidual;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Corrects the count by the open-circuit voltage after a long rest (the R rules of {@code
 * docs/rules.md}), once a rest.
 *
 * <p>The voltage's uncertainty is turned into one of state of charge by the table itself. On a flat
 * curve it comes out wider than any band worth having and the correction is refused by arithmetic,
 * not by a special case for a chemistry. What remains is one-sided: the truth lies above what the
 * voltage less its bound says, and under what the voltage plus its bound says.
 *
 * <p>A voltage at float or above, or above what any rested battery has, is a charger's or surface
 * charge, however little flows: it decides nothing.
 */
public final class RestRule {
    private static final int MINUTES_PER_HOUR = 60;

    /** Surface charge: no charging in the last twelve hours (common practice, no source). */
    private static final int AFTER_CHARGE_MINUTES = 12 * MINUTES_PER_HOUR;

    private static final int LOWEST_MILLICELSIUS = 5_000;

    // Parameters.
    private final int restMinutes;
    private final long restMicroamps;
    private final long boundMicrovolts;
    private final long lowestMicrovolts;
    private final long highestMicrovolts;
    private final FullChargeLimits limits;
    private final RestVoltageTable table;

    // State.
    private final QuietTime quietTime;
    private int restedMinutes;
    private int unchargedMinutes;
    private boolean usedThisRest;
    private int targetPartsPerMillion;
    private long residualPartsPerMillion;
    private int lowestPartsPerMillion;
    private int highestPartsPerMillion;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public RestRule(GaugeSettings settings) {
        quietTime = new QuietTime(settings);
        restMinutes = (int) settings.get(Setting.REST_TIME) * MINUTES_PER_HOUR;
        // derived: 0.1 % of the capacity in one hour, at least twice the offset bound
        restMicroamps =
                Math.max(settings.get(Setting.CAPACITY), 2 * settings.get(Setting.OFFSET_BOUND));
        boundMicrovolts = settings.get(Setting.REST_VOLTAGE_BOUND) * 1_000;
        limits = new FullChargeLimits(settings);
        lowestMicrovolts = settings.get(Setting.REST_VOLTAGE_0) * 1_000;
        highestMicrovolts = settings.get(Setting.REST_VOLTAGE_100) * 1_000;
        table = new RestVoltageTable(settings);
    }

    /** Begins the quiet time: after a restart or a change of settings figures are settling. */
    public void beginQuietTime() {
        quietTime.begin();
    }

    /**
     * Judges one whole minute.
     *
     * <p><b>Range:</b> minutes saturate at their limits; half-widths as in {@link AnchorResidual}.
     *
     * @param minute the minute's figures
     * @param temperatureMillicelsius battery temperature, or absent
     * @param shownPartsPerMillion the count
     * @param halfWidthPartsPerMillion the wider side of the present band
     * @return what the gauge shall do
     */
    public RuleOutcome judge(
            MinuteMean minute,
            int temperatureMillicelsius,
            int shownPartsPerMillion,
            int halfWidthPartsPerMillion) {
        if (restMinutes == 0) {
            return RuleOutcome.NONE;
        }
        boolean quiet = quietTime.passMinute();
        long mean = minute.meanMicroamps();
        unchargedMinutes =
                mean > restMicroamps ? 0 : Math.min(unchargedMinutes + 1, AFTER_CHARGE_MINUTES);
        boolean still =
                !minute.isDoubtful()
                        && minute.highestMicroamps() <= restMicroamps
                        && minute.lowestMicroamps() >= -restMicroamps;
        if (!still || minute.lowestMicrovolts() == 0) {
            restedMinutes = 0;
            usedThisRest = false;
            return RuleOutcome.NONE;
        }
        restedMinutes = Math.min(restedMinutes + 1, restMinutes);
        if (quiet
                || usedThisRest
                || restedMinutes < restMinutes
                || unchargedMinutes < AFTER_CHARGE_MINUTES
                || !isRestedVoltage(minute.meanMicrovolts(), temperatureMillicelsius)
                || (temperatureMillicelsius != Sample.TEMPERATURE_ABSENT
                        && temperatureMillicelsius < LOWEST_MILLICELSIUS)) {
            return RuleOutcome.NONE;
        }
        usedThisRest = true;
        return compare(minute.meanMicrovolts(), shownPartsPerMillion, halfWidthPartsPerMillion);
    }

    /**
     * No rested battery stands above the end of the table and its bound. Under that a charger that
     * floats is known by its voltage; in the warmth it floats lower, and in the cold one without a
     * compensation floats no higher.
     */
    private boolean isRestedVoltage(long microvolts, int temperatureMillicelsius) {
        return microvolts <= highestMicrovolts + boundMicrovolts
                && (limits.floatAt25Microvolts == 0
                        || microvolts
                                < limits.floatAt25Microvolts
                                        + Math.min(
                                                0,
                                                limits.compensationMicrovolts(
                                                        temperatureMillicelsius)));
    }

    /**
     * Beyond the table's ends the voltage says no more than at them: else a bound that finds the
     * same figure on both its sides would make a perfect anchor.
     */
    private RuleOutcome compare(long meanMicrovolts, int shown, int halfWidth) {
        long microvolts = FixedMath.clamp(meanMicrovolts, lowestMicrovolts, highestMicrovolts);
        int atVoltage = table.partsPerMillion(microvolts);
        lowestPartsPerMillion = table.partsPerMillion(microvolts - boundMicrovolts);
        highestPartsPerMillion = table.partsPerMillion(microvolts + boundMicrovolts);
        long anchorHalfWidth =
                Math.max(atVoltage - lowestPartsPerMillion, highestPartsPerMillion - atVoltage);
        if (anchorHalfWidth >= halfWidth) {
            return RuleOutcome.BAND_CLIPPED;
        }
        long weightQ16 = AnchorResidual.weightQ16(halfWidth, anchorHalfWidth);
        targetPartsPerMillion = (int) (shown + (((atVoltage - shown) * weightQ16) >> 16));
        residualPartsPerMillion = AnchorResidual.combined(halfWidth, anchorHalfWidth);
        return RuleOutcome.CORRECTED_BY_REST;
    }

    /** Samples were missing: whether the battery rested is not known. */
    public void samplesMissing() {
        restedMinutes = 0;
        unchargedMinutes = 0;
        usedThisRest = false;
    }

    /**
     * Where the count shall go after {@link RuleOutcome#CORRECTED_BY_REST}.
     *
     * @return ppm
     */
    public int targetPartsPerMillion() {
        return targetPartsPerMillion;
    }

    /**
     * Half-width after {@link RuleOutcome#CORRECTED_BY_REST}.
     *
     * @return ppm
     */
    public long residualPartsPerMillion() {
        return residualPartsPerMillion;
    }

    /**
     * Lowest state of charge that the last rested voltage allows.
     *
     * @return ppm
     */
    public int lowestPartsPerMillion() {
        return lowestPartsPerMillion;
    }

    /**
     * Highest state of charge that the last rested voltage allows.
     *
     * @return ppm
     */
    public int highestPartsPerMillion() {
        return highestPartsPerMillion;
    }

    /**
     * How long the battery has rested.
     *
     * @return whole minutes, up to the rest time
     */
    public int restedMinutes() {
        return restedMinutes;
    }
}
