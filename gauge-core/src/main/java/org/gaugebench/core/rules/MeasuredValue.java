package org.gaugebench.core.rules;

import org.gaugebench.core.fixed.FixedMath;

/**
 * A value that the gauge works out by itself, beside the declared one: it moves only when two
 * results in a row agree, only by a quarter of the difference, and only within limits.
 */
final class MeasuredValue {
    private static final int STEP_DIVISOR = 4;

    // Parameters.
    private final long declaredValue;
    private final long lowestValue;
    private final long highestValue;
    private final long longestStepValue;
    private final long agreementValue;

    // State.
    private long measuredValue;
    private long candidateValue;

    MeasuredValue(long declared, long lowest, long highest, long longestStep, long agreement) {
        this.declaredValue = declared;
        this.lowestValue = lowest;
        this.highestValue = highest;
        this.longestStepValue = longestStep;
        this.agreementValue = agreement;
    }

    /**
     * Takes one result fit for use as evidence.
     *
     * <p><b>Range:</b> values to 1e10, sums of two to 2e10.
     *
     * @return whether the measured value moved
     */
    boolean offer(long result) {
        boolean agrees = candidateValue != 0 && Math.abs(candidateValue - result) <= agreementValue;
        long mean = (candidateValue + result) / 2;
        candidateValue = result;
        if (!agrees) {
            return false;
        }
        long from = measuredValue == 0 ? declaredValue : measuredValue;
        // The first agreeing pair moves by a quarter as well: one bad pair must not be a jump.
        long step =
                FixedMath.clamp((mean - from) / STEP_DIVISOR, -longestStepValue, longestStepValue);
        measuredValue = FixedMath.clamp(from + step, lowestValue, highestValue);
        return true;
    }

    /** The measured value, or 0 while there is none. */
    long measured() {
        return measuredValue;
    }

    /** The last result, or 0. */
    long candidate() {
        return candidateValue;
    }

    void forget() {
        measuredValue = 0;
        candidateValue = 0;
    }

    void resume(long savedMeasured, long savedCandidate) {
        measuredValue =
                savedMeasured == 0 ? 0 : FixedMath.clamp(savedMeasured, lowestValue, highestValue);
        candidateValue = Math.max(savedCandidate, 0);
    }
}
