package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.FixedMath;

/**
 * Smooths the current on which the hours rest: a single pole over whole minutes, seeded with the
 * first one, so that it never starts from zero.
 *
 * <p>The value carries eight fraction bits; without them a shift filter stops short of its input by
 * up to 2^shift units.
 */
public final class LoadFilter {
    /** An eighth of the difference a minute: a step is within 10 % after 18 minutes. */
    private static final int SHIFT = 3;

    private static final int FRACTION_BITS = 8;

    // State.
    private boolean seeded;
    private long filteredMicroampsQ8;

    /** Creates a filter that has seen nothing. */
    public LoadFilter() {}

    /**
     * Takes one whole minute's mean.
     *
     * <p><b>Range:</b> 2^31 uA with 8 fraction bits is 2^39. The shift rounds toward minus infinity
     * by at most 1/256 uA a minute, so a constant input is reached exactly from above and to 7/256
     * uA from below; {@link #microamps()} rounds to the nearest and so reaches it from both sides.
     *
     * @param meanMicroamps the minute's mean current
     */
    public void addMinute(int meanMicroamps) {
        long inputQ8 = (long) meanMicroamps << FRACTION_BITS;
        if (!seeded) {
            seeded = true;
            filteredMicroampsQ8 = inputQ8;
            return;
        }
        filteredMicroampsQ8 += (inputQ8 - filteredMicroampsQ8) >> SHIFT;
    }

    /**
     * Whether a first minute has been seen.
     *
     * @return false until then
     */
    public boolean isSeeded() {
        return seeded;
    }

    /**
     * The filtered current.
     *
     * <p><b>Range:</b> within the range of the inputs; halves round away from zero.
     *
     * @return microamps, to the nearest, positive into the battery
     */
    public int microamps() {
        return FixedMath.clampToInt(
                FixedMath.divideHalfAwayFromZero(filteredMicroampsQ8, 1 << FRACTION_BITS));
    }

    /**
     * The filtered current with its fraction.
     *
     * @return 1/256 microamps
     */
    public long microampsQ8() {
        return filteredMicroampsQ8;
    }
}
