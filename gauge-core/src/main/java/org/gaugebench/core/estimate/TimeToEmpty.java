package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Hours left, three times: at the filtered current (with a low and a high end from the error band),
 * at the current of this moment, and at the usual use of the last 24 hours.
 *
 * <p>"No estimate" is kept for the one case in which there is nothing to divide by: a mean current
 * within the offset bound. A small load above it has an honest answer, which may exceed what the
 * display can show; then the answer is "more than" the last hour, never a number that looks
 * measured.
 *
 * <p>Charge below the kept-back charge does not count: at that level the time is zero while the
 * state of charge goes on.
 */
public final class TimeToEmpty {
    private static final int MINUTES_PER_HOUR = 60;
    private static final int MILLIS_PER_MINUTE = 60_000;
    private static final int LONGEST_MINUTES = 1_000 * MINUTES_PER_HOUR;

    // Parameters.
    private final long offsetBoundMicroamps;
    private final int longestMinutes;
    private final long keptBackNanocoulombs;
    private final RateModel rateModel;

    // State: the last answers.
    private final TimeAnswer atFilteredLoad = new TimeAnswer();
    private final TimeAnswer low = new TimeAnswer();
    private final TimeAnswer high = new TimeAnswer();
    private final TimeAnswer atThisLoad = new TimeAnswer();
    private final TimeAnswer atUsualUse = new TimeAnswer();

    /**
     * Derives the limits; nothing is kept back and neither rate nor temperature matters.
     *
     * @param settings checked settings
     */
    public TimeToEmpty(GaugeSettings settings) {
        this(
                settings.get(Setting.OFFSET_BOUND),
                (int) settings.get(Setting.LONGEST_TIME) * MINUTES_PER_HOUR,
                0,
                RateModel.none());
    }

    /**
     * Takes every parameter as a number.
     *
     * @param offsetBoundMicroamps no hours while the mean current is within it; at least 1
     * @param longestMinutes beyond it the answer is "more than"; 1 to 60,000
     * @param keptBackNanocoulombs charge at which the time is zero; 0 keeps nothing back
     * @param rateModel what rate and cold leave behind
     */
    public TimeToEmpty(
            long offsetBoundMicroamps,
            int longestMinutes,
            long keptBackNanocoulombs,
            RateModel rateModel) {
        this.offsetBoundMicroamps = Math.max(1, offsetBoundMicroamps);
        this.longestMinutes = (int) FixedMath.clamp(longestMinutes, 1, LONGEST_MINUTES);
        this.keptBackNanocoulombs = Math.max(0, keptBackNanocoulombs);
        this.rateModel = rateModel;
    }

    /**
     * Works out every answer.
     *
     * @param input what is known; not kept
     * @param filter the filtered current
     */
    public void update(EstimateInput input, LoadFilter filter) {
        int celsius = input.temperatureMillicelsius;
        boolean filtered = input.known && filter.isSeeded();
        int filteredMicroamps = filter.microamps();
        // One load, three charges: what it leaves behind is the same.
        long unusable = unusableNanocoulombs(filteredMicroamps, celsius);
        answer(atFilteredLoad, filtered, input.chargeNanocoulombs, filteredMicroamps, unusable);
        answer(low, filtered, input.lowNanocoulombs, filteredMicroamps, unusable);
        answer(high, filtered, input.highNanocoulombs, filteredMicroamps, unusable);
        int presentMicroamps = input.presentMicroamps;
        unusable = unusableNanocoulombs(presentMicroamps, celsius);
        answer(atThisLoad, input.known, input.chargeNanocoulombs, presentMicroamps, unusable);
        int usualMicroamps = -filter.usualMicroamps();
        boolean usual = input.known && filter.usualHours() > 0;
        unusable = unusableNanocoulombs(usualMicroamps, celsius);
        answer(atUsualUse, usual, input.chargeNanocoulombs, usualMicroamps, unusable);
    }

    /**
     * Works out the answer at the filtered current alone, without a band and without temperature.
     *
     * @param chargeNanocoulombs what is left
     * @param filter the filtered current
     * @param known whether the charge is known at all
     */
    public void update(long chargeNanocoulombs, LoadFilter filter, boolean known) {
        int microamps = filter.microamps();
        answer(
                atFilteredLoad,
                known && filter.isSeeded(),
                chargeNanocoulombs,
                microamps,
                unusableNanocoulombs(microamps, Sample.TEMPERATURE_ABSENT));
    }

    /**
     * Kept-back charge and what rate and cold leave behind are one and the same charge at the
     * bottom of the battery: the larger of the two is where the time ends.
     */
    private long unusableNanocoulombs(int currentMicroamps, int millicelsius) {
        long behind = rateModel.behindNanocoulombs(currentMicroamps, millicelsius);
        return Math.max(keptBackNanocoulombs, behind);
    }

    /**
     * One answer.
     *
     * <p><b>Range:</b> nC / uA = ms; the divisor is at least the offset bound, so never zero.
     * Rounded down to whole minutes, because a time to empty is a promise. The comparison with the
     * longest time happens in 64 bits, before narrowing.
     */
    private void answer(
            TimeAnswer answer,
            boolean known,
            long chargeNanocoulombs,
            int currentMicroamps,
            long unusableNanocoulombs) {
        if (!known || Math.abs((long) currentMicroamps) < offsetBoundMicroamps) {
            answer.none();
        } else if (currentMicroamps > 0) {
            answer.set(EstimateState.CHARGING, 0);
        } else {
            long usable = Math.max(0, chargeNanocoulombs - unusableNanocoulombs);
            long whole = usable / -(long) currentMicroamps / MILLIS_PER_MINUTE;
            if (whole > longestMinutes) {
                answer.set(EstimateState.MORE_THAN, longestMinutes);
            } else {
                answer.set(EstimateState.ESTIMATE, (int) whole);
            }
        }
    }

    /**
     * What kind of answer the one at the filtered current is.
     *
     * @return the state of the last update
     */
    public EstimateState state() {
        return atFilteredLoad.state();
    }

    /**
     * The time at the filtered current, by {@link #state()}.
     *
     * @return whole minutes; 0 where there is none
     */
    public int minutes() {
        return atFilteredLoad.minutes();
    }

    /**
     * The time at the filtered current if the charge is at the low end of its error band.
     *
     * @return this object's own, live
     */
    public TimeAnswer low() {
        return low;
    }

    /**
     * The time at the filtered current if the charge is at the high end of its error band.
     *
     * @return this object's own, live
     */
    public TimeAnswer high() {
        return high;
    }

    /**
     * The time if the current of this moment stays.
     *
     * @return this object's own, live
     */
    public TimeAnswer atThisLoad() {
        return atThisLoad;
    }

    /**
     * The time at the usual use of the last 24 hours, charging or not.
     *
     * @return this object's own, live
     */
    public TimeAnswer atUsualUse() {
        return atUsualUse;
    }
}
