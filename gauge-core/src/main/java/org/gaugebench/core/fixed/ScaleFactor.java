package org.gaugebench.core.fixed;

/**
 * A positive rational factor as one multiplier and one shift, chosen so that the product of the
 * largest input uses the full width of a signed 64-bit word.
 *
 * <p>The multiplier is the factor times 2^shift, rounded half up, with the largest shift for which
 * {@code inputLimit x multiplier + 2^(shift-1)} still fits 63 bits. So the multiplier is wrong by
 * at most half a unit, and a result by at most {@code input / 2^(shift+1)} beside its own rounding
 * of one half.
 */
public final class ScaleFactor {
    // Parameters.
    private final long multiplier;
    private final int shift;
    private final long roundingHalf;
    private final long inputLimit;

    /**
     * Chooses multiplier and shift.
     *
     * @param numerator numerator of the factor, 1 to 2^62
     * @param denominator denominator of the factor, 1 to 2^62
     * @param inputLimit largest magnitude ever handed to {@link #apply}, 1 to 2^40; what lies
     *     beyond is clipped to it
     * @throws ArithmeticException if the factor is so large that even shift 0 does not fit
     */
    public ScaleFactor(long numerator, long denominator, long inputLimit) {
        // Long division, bit by bit: quotient = numerator * 2^shift / denominator.
        long quotient = numerator / denominator;
        long remainder = numerator % denominator;
        int bits = 0;
        // +1: the rounding at the end may add one unit, with shift 0 too.
        if (Math.multiplyHigh(quotient + 1, inputLimit) != 0 || (quotient + 1) * inputLimit < 0) {
            throw new ArithmeticException("factor too large for its input limit");
        }
        while (bits < 62) {
            long doubledRemainder = remainder << 1;
            int bit = doubledRemainder >= denominator ? 1 : 0;
            long next = (quotient << 1) + bit;
            // +1: the final rounding may add one unit to the multiplier.
            if (!fits(next + 1, inputLimit, bits + 1)) {
                break;
            }
            quotient = next;
            remainder = doubledRemainder - (bit == 1 ? denominator : 0);
            bits++;
        }
        if ((remainder << 1) >= denominator) {
            quotient++;
        }
        this.multiplier = quotient;
        this.shift = bits;
        this.roundingHalf = bits == 0 ? 0 : 1L << (bits - 1);
        this.inputLimit = inputLimit;
    }

    private static boolean fits(long multiplier, long inputLimit, int shift) {
        if (Math.multiplyHigh(multiplier, inputLimit) != 0) {
            return false;
        }
        long product = multiplier * inputLimit;
        return product >= 0 && product <= Long.MAX_VALUE - (1L << (shift - 1));
    }

    /**
     * Multiplies by the factor, halves rounded away from zero.
     *
     * <p><b>Range:</b> input clipped to +-inputLimit; the product uses at most 63 bits and cannot
     * overflow by construction; symmetric about zero: apply(-x) = -apply(x).
     *
     * @param input the value to scale
     * @return round(input x factor), half away from zero
     */
    public long apply(long input) {
        // Clamped before the sign is taken off: -Long.MIN_VALUE does not exist.
        return applyInRange(FixedMath.clamp(input, -inputLimit, inputLimit));
    }

    /**
     * {@link #apply} of a value that needs no clip.
     *
     * <p><b>Range:</b> magnitude at most {@link #inputLimit}; nothing checks it.
     *
     * @param input the value to scale
     * @return round(input x factor), half away from zero
     */
    public long applyInRange(long input) {
        long scaled = applyToMagnitude(Math.abs(input));
        return input < 0 ? -scaled : scaled;
    }

    /**
     * {@link #apply} of a value that needs no clip and has no sign.
     *
     * <p><b>Range:</b> 0 to {@link #inputLimit}; nothing checks it.
     *
     * @param magnitude the value to scale
     * @return round(magnitude x factor), half up
     */
    public long applyToMagnitude(long magnitude) {
        return (magnitude * multiplier + roundingHalf) >> shift;
    }

    /**
     * The multiplier, for tests and for the porter.
     *
     * @return factor x 2^shift, rounded
     */
    public long multiplier() {
        return multiplier;
    }

    /**
     * The shift, for tests and for the porter.
     *
     * @return number of fraction bits of the multiplier
     */
    public int shift() {
        return shift;
    }

    /**
     * The largest magnitude that is not clipped.
     *
     * @return the input limit
     */
    public long inputLimit() {
        return inputLimit;
    }
}
