package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.fixed.Log2Table;
import org.gaugebench.core.port.FullTimeState;

/**
 * Hours to full: a bulk part at the present current, then the taper.
 *
 * <p>At the charger's full voltage the current falls as exp(-t / tau), so from a current I to the
 * end current it takes tau x ln(I / end). What is still missing then is tau x I; so the taper
 * begins where the missing charge is tau x I, and what is missing beyond that is bulk. Charge over
 * current alone would promise a fraction of the true time.
 *
 * <p>A source that moved by more than 30 % within 15 minutes gives no time. At full voltage the
 * fall of the current is the taper itself, and only a rise counts as unsteady.
 */
public final class TimeToFull {
    private static final int STEADY_MINUTES = 15;
    private static final int UNSTEADY_PERCENT = 30;
    private static final int PERCENT = 100;
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final long MILLIS_PER_MINUTE = 60_000;
    private static final long MILLIS_PER_HOUR = 3_600_000;

    /** The least net current that counts as charging: 1 % of the capacity an hour. */
    private static final int LEAST_DIVISOR = 100;

    // Parameters.
    private final long capacityNanocoulombs;
    private final int efficiencyPartsPerMillion;
    private final long leastMicroamps;
    private final long endMicroamps;
    private final int longestMinutes;
    private final TaperTime taper;

    // State: the last minutes of charging.
    private final int[] minuteMicroamps = new int[STEADY_MINUTES];
    private int chargingMinutes;
    private int nextIndex;
    private boolean atFullVoltage;

    // State: the last answer.
    private FullTimeState state = FullTimeState.NO_ESTIMATE;
    private int minutes;

    /**
     * Takes every parameter as a number.
     *
     * @param capacityNanocoulombs full-charge capacity, 1,000,000 to 2^56
     * @param efficiencyPartsPerMillion part of the charge put in that is kept, 100,000 to 1,000,000
     * @param taperMinutes declared time constant of the taper, to 1,440; 0 if unknown
     * @param endPartsPerMillion end current per hour of capacity, at least 1
     * @param longestMinutes beyond it the answer is "not before"; 1 to 60,000
     */
    public TimeToFull(
            long capacityNanocoulombs,
            int efficiencyPartsPerMillion,
            int taperMinutes,
            int endPartsPerMillion,
            int longestMinutes) {
        this.capacityNanocoulombs = capacityNanocoulombs;
        this.efficiencyPartsPerMillion =
                (int) FixedMath.clamp(efficiencyPartsPerMillion, 100_000, FULL_PARTS_PER_MILLION);
        long oneHourMicroamps = capacityNanocoulombs / MILLIS_PER_HOUR;
        leastMicroamps = Math.max(1, oneHourMicroamps / LEAST_DIVISOR);
        endMicroamps = Math.max(1, oneHourMicroamps * endPartsPerMillion / FULL_PARTS_PER_MILLION);
        this.longestMinutes = (int) FixedMath.clamp(longestMinutes, 1, 60_000);
        taper = new TaperTime(taperMinutes);
    }

    /**
     * Takes one whole minute and works out the time.
     *
     * @param known whether the charge is known
     * @param chargeNanocoulombs what is in the battery
     * @param meanMicroamps the minute's mean current, positive into the battery
     * @param fullVoltage whether the battery stood at the charger's full voltage all the minute
     */
    public void addMinute(
            boolean known, long chargeNanocoulombs, int meanMicroamps, boolean fullVoltage) {
        // In a taper the current may fall below what would count as charging elsewhere.
        boolean tapering = atFullVoltage && fullVoltage;
        long least = tapering ? Math.min(leastMicroamps, endMicroamps) : leastMicroamps;
        if (meanMicroamps < least) {
            forgetTheSource();
            answer(FullTimeState.NOT_CHARGING, 0);
            return;
        }
        remember(meanMicroamps, fullVoltage);
        if (!known && !fullVoltage) {
            answer(FullTimeState.NO_ESTIMATE, 0);
        } else if (isUnsteady()) {
            answer(FullTimeState.UNSTEADY, 0);
        } else {
            estimate(chargeNanocoulombs, meanMicroamps);
        }
    }

    private void remember(int meanMicroamps, boolean fullVoltage) {
        minuteMicroamps[nextIndex] = meanMicroamps;
        nextIndex = nextIndex + 1 == STEADY_MINUTES ? 0 : nextIndex + 1;
        chargingMinutes = Math.min(chargingMinutes + 1, STEADY_MINUTES);
        atFullVoltage = fullVoltage;
        if (fullVoltage) {
            taper.addMinute(meanMicroamps);
        } else {
            taper.endTaper();
        }
    }

    private void forgetTheSource() {
        chargingMinutes = 0;
        nextIndex = 0;
        atFullVoltage = false;
        taper.endTaper();
    }

    /** Bulk: any minute 30 % off their mean. Full voltage: the newest 30 % above any before. */
    private boolean isUnsteady() {
        long lowest = Integer.MAX_VALUE;
        long highest = Integer.MIN_VALUE;
        long sum = 0;
        for (int i = 0; i < chargingMinutes; i++) {
            lowest = Math.min(lowest, minuteMicroamps[i]);
            highest = Math.max(highest, minuteMicroamps[i]);
            sum += minuteMicroamps[i];
        }
        if (atFullVoltage) {
            long newest = minuteMicroamps[nextIndex == 0 ? STEADY_MINUTES - 1 : nextIndex - 1];
            return newest * PERCENT > lowest * (PERCENT + UNSTEADY_PERCENT);
        }
        long mean = sum / chargingMinutes;
        return highest * PERCENT > mean * (PERCENT + UNSTEADY_PERCENT)
                || lowest * PERCENT < mean * (PERCENT - UNSTEADY_PERCENT);
    }

    /**
     * Bulk and taper.
     *
     * <p><b>Range:</b> missing at most 2^56 nC, over an efficiency of at least 0.1 below 2^60; over
     * uA it is ms. The taper's charge, 2^31 uA times at most 5,760 min of 60,000 ms, stays below
     * 2^60. Logarithm below 2^29, times LN2 below 2^53, shifted to below 2^29, times tau's 2^29 ms
     * below 2^58. "Not before" is rounded down, the estimate up: neither promises full too early.
     */
    private void estimate(long chargeNanocoulombs, int currentMicroamps) {
        long missing =
                FixedMath.clamp(capacityNanocoulombs - chargeNanocoulombs, 0, capacityNanocoulombs);
        long missingIn = gross(missing);
        long tau = taper.minutes();
        if (tau == 0 || (chargingMinutes < STEADY_MINUTES && !atFullVoltage)) {
            long least = missingIn / currentMicroamps / MILLIS_PER_MINUTE;
            answer(FullTimeState.NOT_BEFORE, least);
            return;
        }
        long tauMillis = tau * MILLIS_PER_MINUTE;
        long kneeMicroamps = currentMicroamps;
        long bulkMillis = 0;
        if (!atFullVoltage) {
            kneeMicroamps = Math.min(currentMicroamps, missingIn / tauMillis);
            // Below the knee the charger's current no longer decides.
            bulkMillis = Math.max(0, missingIn - tauMillis * currentMicroamps) / currentMicroamps;
        }
        long taperMillis = 0;
        if (kneeMicroamps > endMicroamps) {
            long log2 = (long) Log2Table.log2Q24(kneeMicroamps) - Log2Table.log2Q24(endMicroamps);
            long naturalQ24 = (log2 * Log2Table.LN2_Q24) >> Log2Table.FRACTION_BITS;
            taperMillis = (naturalQ24 * tauMillis) >> Log2Table.FRACTION_BITS;
        }
        long whole = (bulkMillis + taperMillis + MILLIS_PER_MINUTE - 1) / MILLIS_PER_MINUTE;
        if (whole > longestMinutes) {
            answer(FullTimeState.NOT_BEFORE, longestMinutes);
        } else {
            answer(FullTimeState.ESTIMATE, whole);
        }
    }

    /** What must be put in so that this much is kept; split so that no product overflows. */
    private long gross(long nanocoulombs) {
        long quotient = nanocoulombs / efficiencyPartsPerMillion;
        long rest = nanocoulombs % efficiencyPartsPerMillion;
        return quotient * FULL_PARTS_PER_MILLION
                + rest * FULL_PARTS_PER_MILLION / efficiencyPartsPerMillion;
    }

    private void answer(FullTimeState newState, long newMinutes) {
        state = newState;
        minutes = (int) Math.min(newMinutes, longestMinutes);
    }

    /**
     * What kind of answer it is.
     *
     * @return the state of the last minute
     */
    public FullTimeState state() {
        return state;
    }

    /**
     * The time, by {@link #state()}.
     *
     * @return whole minutes, 0 to the longest; 0 where there is none
     */
    public int minutes() {
        return minutes;
    }

    /**
     * Time constant of the taper in use.
     *
     * @return minutes; measured where a taper was seen, else declared; 0 if unknown
     */
    public int taperMinutes() {
        return taper.minutes();
    }
}
