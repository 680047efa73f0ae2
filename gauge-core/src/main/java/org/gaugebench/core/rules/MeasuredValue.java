package org.gaugebench.core.rules;

import org.gaugebench.core.fixed.FixedMath;

/**
 * A value that the gauge works out by itself, beside the declared one: it moves only when two
 * results in a row agree, only by a quarter of the difference, and only within limits.
 */
final class MeasuredValue {
    private static final int STEP_DIVISOR = 4;

    // Parameters.
    private final long declared;
    private final long lowest;
    private final long highest;
    private final long longestStep;
    private final long agreement;

    // State.
    private long measured;
    private long candidate;

    MeasuredValue(long declared, long lowest, long highest, long longestStep, long agreement) {
        this.declared = declared;
        this.lowest = lowest;
        this.highest = highest;
        this.longestStep = longestStep;
        this.agreement = agreement;
    }

    /**
     * Takes one result fit for use as evidence.
     *
     * <p><b>Range:</b> values to 1e10, sums of two to 2e10.
     *
     * @return whether the measured value moved
     */
    boolean offer(long result) {
        boolean agrees = candidate != 0 && Math.abs(candidate - result) <= agreement;
        long mean = (candidate + result) / 2;
        candidate = result;
        if (!agrees) {
            return false;
        }
        long from = measured == 0 ? declared : measured;
        // The first agreeing pair moves by a quarter as well: one bad pair must not be a jump.
        long step = FixedMath.clamp((mean - from) / STEP_DIVISOR, -longestStep, longestStep);
        measured = FixedMath.clamp(from + step, lowest, highest);
        return true;
    }

    /** The measured value, or 0 while there is none. */
    long measured() {
        return measured;
    }

    /** The last result, or 0. */
    long candidate() {
        return candidate;
    }

    void forget() {
        measured = 0;
        candidate = 0;
    }

    void resume(long savedMeasured, long savedCandidate) {
        measured = savedMeasured == 0 ? 0 : FixedMath.clamp(savedMeasured, lowest, highest);
        candidate = Math.max(savedCandidate, 0);
    }
}
