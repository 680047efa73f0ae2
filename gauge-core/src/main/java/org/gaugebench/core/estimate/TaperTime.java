package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.Log2Table;

/**
 * Time constant of the taper, the fall of the charge current at the charger's full voltage: as
 * declared, or as measured from the last taper that halved.
 */
final class TaperTime {
    private static final int HALVES_Q24 = Log2Table.ONE_Q24;

    /** A measured value is held to a quarter and to four times the declared one. */
    private static final int HOLD_TIMES = 4;

    /** One day. */
    private static final int LONGEST_MINUTES = 1_440;

    // Parameters.
    private final int declaredMinutes;

    // State.
    private int measuredMinutes;
    private int referenceMicroamps;
    private int sinceReferenceMinutes;

    TaperTime(int declaredMinutes) {
        this.declaredMinutes = Math.max(0, Math.min(declaredMinutes, LONGEST_MINUTES));
    }

    /**
     * Takes one minute of the taper. When the current is half of where the look began, its time
     * constant is the time over the natural logarithm of the ratio. A minute above where the look
     * began is no taper: the look begins again there.
     *
     * <p><b>Range:</b> minutes at most 2^20 x 2^24 x 2^24 would be 2^68, so the two fractions are
     * divided out one after the other: 2^20 x 2^24 = 2^44, then again below 2^47.
     */
    void addMinute(int microamps) {
        sinceReferenceMinutes++;
        if (referenceMicroamps == 0 || microamps > referenceMicroamps) {
            startAt(microamps);
            return;
        }
        long ratioQ24 = (long) Log2Table.log2Q24(referenceMicroamps) - Log2Table.log2Q24(microamps);
        if (ratioQ24 >= HALVES_Q24) {
            long perHalf = ((long) sinceReferenceMinutes << Log2Table.FRACTION_BITS) / ratioQ24;
            long minutes = (perHalf << Log2Table.FRACTION_BITS) / Log2Table.LN2_Q24;
            if (declaredMinutes > 0) {
                minutes = Math.max(minutes, declaredMinutes / HOLD_TIMES);
                minutes = Math.min(minutes, (long) declaredMinutes * HOLD_TIMES);
                measuredMinutes = (int) Math.max(1, minutes);
            }
            startAt(microamps);
        }
    }

    private void startAt(int microamps) {
        referenceMicroamps = Math.max(1, microamps);
        sinceReferenceMinutes = 0;
    }

    /** The taper ended; what was measured stays. */
    void endTaper() {
        referenceMicroamps = 0;
        sinceReferenceMinutes = 0;
    }

    /** The measured value where there is one, else the declared; 0 where neither is known. */
    int minutes() {
        return measuredMinutes > 0 ? measuredMinutes : declaredMinutes;
    }
}
