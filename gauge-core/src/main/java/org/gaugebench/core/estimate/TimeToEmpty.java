package org.gaugebench.core.estimate;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Hours left at the filtered current.
 *
 * <p>"No estimate" is kept for the one case in which there is nothing to divide by: a mean current
 * within the offset bound. A small load above it has an honest answer, which may exceed what the
 * display can show; then the answer is "more than" the last hour, never a number that looks
 * measured.
 */
public final class TimeToEmpty {
    private static final int MINUTES_PER_HOUR = 60;
    private static final int MILLIS_PER_MINUTE = 60_000;

    // Parameters.
    private final long offsetBoundMicroamps;
    private final long longestMinutes;

    // State: the last answer.
    private EstimateState state = EstimateState.NO_ESTIMATE;
    private int minutes;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public TimeToEmpty(GaugeSettings settings) {
        offsetBoundMicroamps = settings.get(Setting.OFFSET_BOUND);
        longestMinutes = settings.get(Setting.LONGEST_TIME) * MINUTES_PER_HOUR;
    }

    /**
     * Works out the time.
     *
     * <p><b>Range:</b> nC / uA = ms; the divisor is at least the offset bound, so never zero.
     * Rounded down to whole minutes, because a time to empty is a promise. The comparison with the
     * longest time happens in 64 bits, before narrowing.
     *
     * @param chargeNanocoulombs what is left
     * @param filter the filtered current
     * @param known whether the charge is known at all
     */
    public void update(long chargeNanocoulombs, LoadFilter filter, boolean known) {
        long filteredMicroamps = filter.microamps();
        if (!known || !filter.isSeeded() || Math.abs(filteredMicroamps) < offsetBoundMicroamps) {
            answer(EstimateState.NO_ESTIMATE, 0);
        } else if (filteredMicroamps > 0) {
            answer(EstimateState.CHARGING, 0);
        } else {
            long whole = chargeNanocoulombs / -filteredMicroamps / MILLIS_PER_MINUTE;
            if (whole > longestMinutes) {
                answer(EstimateState.MORE_THAN, longestMinutes);
            } else {
                answer(EstimateState.ESTIMATE, whole);
            }
        }
    }

    private void answer(EstimateState newState, long newMinutes) {
        state = newState;
        minutes = (int) newMinutes;
    }

    /**
     * What kind of answer it is.
     *
     * @return the state of the last update
     */
    public EstimateState state() {
        return state;
    }

    /**
     * The time, by {@link #state()}.
     *
     * @return whole minutes; 0 where there is none
     */
    public int minutes() {
        return minutes;
    }
}
