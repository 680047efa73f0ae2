package org.gaugebench.core.saved;

/**
 * When to save: by charge moved, not by time, so that a parked system writes almost nothing and a
 * busy one never loses more than a step.
 *
 * <p>The default step is 0.5 % of the capacity: half the last digit of a display in whole percent,
 * and below what the error band of a count holds a few hours after an anchor. Net charge counts
 * first, because it is what a restart would get wrong; a ripple that cancels counts at four steps
 * added up, because the band's throughput term would be lost. An anchor and a change of settings
 * save at once.
 *
 * <p><b>Write budget.</b> Charge moved gives at most one save a step. A fast fall of the voltage
 * saves early, but only on credit: each save by charge moved earns one, four at most, and a tenth
 * of a step must have moved. So early saves can at most double the writes. Nothing is written at
 * power-up, and nothing while the voltage is under half the nominal one, where a write may fail
 * half-way; ten brown-outs in three seconds therefore write nothing.
 */
public final class SaveSchedule {
    /** Save step where nobody asks for another: 0.5 % of the capacity. */
    public static final int DEFAULT_STEP_PARTS_PER_MILLION = 5_000;

    /** A fall this part of the nominal voltage within ten seconds is fast: 0.5 V for 12 V. */
    private static final int FALL_DIVISOR = 24;

    /** No save begins under this part of the nominal voltage. */
    private static final int FLOOR_DIVISOR = 2;

    private static final int GROSS_STEP_COUNT = 4;
    private static final int EARLY_DIVISOR = 10;
    private static final int MOST_CREDIT_COUNT = 4;
    private static final int QUIET_MILLIS = 5_000;
    private static final int URGENT_GAP_MILLIS = 10_000;
    private static final int DAY_MILLIS = 86_400_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;
    private static final int PARTS_PER_MILLION = 1_000_000;

    // Parameters.
    private final long stepNanocoulombs;
    private final int floorMicrovolts;

    // State.
    private final FallingVolts falling;
    private long savedChargeNanocoulombs;
    private long savedGrossNanocoulombs;
    private int sinceSaveMillis;
    private int sincePowerUpMillis;
    private int creditCount;
    private boolean anchorPending;
    private boolean settingsPending;
    private SaveReason lastReason = SaveReason.NONE;

    /**
     * Derives the limits.
     *
     * <p><b>Range:</b> capacity / 10^6 x step stays below 3.6e16, the largest capacity; the
     * truncation is below one part in 360,000 of the smallest. A nominal voltage of 1,000 to
     * 100,000 mV stays below 10^8 uV.
     *
     * @param capacityNanocoulombs full-charge capacity, 3.6e11 to 3.6e16
     * @param stepPartsPerMillion save step in parts of the capacity, 1 to 1,000,000
     * @param nominalMillivolts system voltage, 1,000 to 100,000
     */
    public SaveSchedule(long capacityNanocoulombs, int stepPartsPerMillion, int nominalMillivolts) {
        stepNanocoulombs = capacityNanocoulombs / PARTS_PER_MILLION * stepPartsPerMillion;
        int nominalMicrovolts = nominalMillivolts * MICROVOLTS_PER_MILLIVOLT;
        floorMicrovolts = nominalMicrovolts / FLOOR_DIVISOR;
        falling = new FallingVolts(nominalMicrovolts / FALL_DIVISOR);
    }

    /**
     * Power came up: what was restored is what the memory holds. Nothing is due.
     *
     * @param chargeNanocoulombs the restored count
     * @param grossNanocoulombs the restored sum of in and out, as {@link #due} will be given it
     */
    public void powerUp(long chargeNanocoulombs, long grossNanocoulombs) {
        savedChargeNanocoulombs = chargeNanocoulombs;
        savedGrossNanocoulombs = grossNanocoulombs;
        // The last save lies before power-up: an urgent one need not wait.
        sinceSaveMillis = URGENT_GAP_MILLIS;
        sincePowerUpMillis = 0;
        creditCount = 1;
        anchorPending = false;
        settingsPending = false;
        lastReason = SaveReason.NONE;
        falling.forget();
    }

    /** The count was corrected: save at the next {@link #due}. */
    public void anchored() {
        anchorPending = true;
    }

    /** Settings were changed: save at the next {@link #due}. */
    public void settingsChanged() {
        settingsPending = true;
    }

    /**
     * Asks, once a tick, whether to save. Every answer but {@link SaveReason#NONE} stays due until
     * {@link #attempted} is called.
     *
     * <p><b>Range:</b> charge within 0 to 3.6e16, so its difference fits; the gross sum may wrap,
     * on purpose: a difference of two is right across the wrap, as with the raw clock. Times
     * saturate at a day, below 2^31.
     *
     * @param chargeNanocoulombs the count
     * @param grossNanocoulombs in and out added up, never falling except at an anchor
     * @param voltageMicrovolts battery voltage
     * @param elapsedMillis since the call before, 0 to 65,535
     * @return why to save now
     */
    public SaveReason due(
            long chargeNanocoulombs,
            long grossNanocoulombs,
            int voltageMicrovolts,
            int elapsedMillis) {
        sinceSaveMillis = Math.min(sinceSaveMillis + elapsedMillis, DAY_MILLIS);
        sincePowerUpMillis = Math.min(sincePowerUpMillis + elapsedMillis, DAY_MILLIS);
        boolean fallsFast = falling.add(voltageMicrovolts, elapsedMillis);
        lastReason =
                voltageMicrovolts < floorMicrovolts
                        ? SaveReason.NONE
                        : reason(chargeNanocoulombs, grossNanocoulombs, fallsFast);
        return lastReason;
    }

    private SaveReason reason(long chargeNanocoulombs, long grossNanocoulombs, boolean fallsFast) {
        long netMoved = Math.abs(chargeNanocoulombs - savedChargeNanocoulombs);
        long grossMoved = grossNanocoulombs - savedGrossNanocoulombs;
        boolean urgentAllowed = sinceSaveMillis >= URGENT_GAP_MILLIS;
        if (settingsPending && urgentAllowed) {
            return SaveReason.SETTINGS_CHANGED;
        }
        if (anchorPending && urgentAllowed) {
            return SaveReason.ANCHORED;
        }
        if (netMoved >= stepNanocoulombs || grossMoved >= GROSS_STEP_COUNT * stepNanocoulombs) {
            return SaveReason.CHARGE_MOVED;
        }
        if (fallsFast
                && urgentAllowed
                && creditCount > 0
                && sincePowerUpMillis >= QUIET_MILLIS
                && netMoved >= stepNanocoulombs / EARLY_DIVISOR) {
            return SaveReason.VOLTS_FALLING;
        }
        return sinceSaveMillis >= DAY_MILLIS ? SaveReason.DAY_PASSED : SaveReason.NONE;
    }

    /**
     * A save was tried, with or without success. A failed one is not repeated at once: a dead
     * memory would be hammered every tick. The next is due a step later.
     *
     * @param chargeNanocoulombs the count that was written
     * @param grossNanocoulombs the sum of in and out that was written
     */
    public void attempted(long chargeNanocoulombs, long grossNanocoulombs) {
        if (lastReason == SaveReason.CHARGE_MOVED) {
            creditCount = Math.min(creditCount + 1, MOST_CREDIT_COUNT);
        } else if (lastReason == SaveReason.VOLTS_FALLING) {
            creditCount--;
        }
        lastReason = SaveReason.NONE;
        savedChargeNanocoulombs = chargeNanocoulombs;
        savedGrossNanocoulombs = grossNanocoulombs;
        sinceSaveMillis = 0;
        anchorPending = false;
        settingsPending = false;
    }

    /**
     * The save step.
     *
     * @return nanocoulombs of net charge
     */
    public long stepNanocoulombs() {
        return stepNanocoulombs;
    }
}
