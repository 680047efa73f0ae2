package org.gaugebench.core.fixed;

/** Rounding, scaling and narrowing on plain integers, each with its rounding said in the name. */
public final class FixedMath {
    private static final long LARGEST_SUM = 1L << 62;

    private FixedMath() {}

    /**
     * Divides with halves rounded away from zero, so that a charge and an equal discharge round
     * alike.
     *
     * <p><b>Range:</b> |numerator| up to 2^62, denominator 1 to 2^62; the doubled remainder stays
     * below 2^63. No overflow inside that range.
     *
     * @param numerator the dividend
     * @param denominator the divisor, above zero
     * @return the quotient, half away from zero
     */
    public static long divideHalfAwayFromZero(long numerator, long denominator) {
        long quotient = numerator / denominator;
        long doubledRemainder = 2 * (numerator - quotient * denominator);
        if (doubledRemainder >= denominator) {
            return quotient + 1;
        }
        return doubledRemainder <= -denominator ? quotient - 1 : quotient;
    }

    /**
     * Multiplies a signed value by a Q16 factor and takes the floor, the product split in a high
     * and a low part so that it cannot overflow.
     *
     * <p><b>Range:</b> value any with |value| at most 2^61, factor 0 to 65536 (1.0), carry 0 to
     * 65535. High part at most 2^45 x 2^16; low part below 2^32 + 2^16. Rounding is toward minus
     * infinity; {@link #scaleQ16Remainder} gives what was cut off, so that a caller who carries it
     * loses nothing.
     *
     * @param value the value to scale
     * @param factorQ16 the factor in units of 2^-16
     * @param carryQ16 remainder of the scaling before this one, in units of 2^-16
     * @return floor((value x factor + carry) / 65536)
     */
    public static long scaleQ16Floor(long value, int factorQ16, int carryQ16) {
        long high = value >> 16;
        long low = value & 0xFFFF;
        return high * factorQ16 + ((low * factorQ16 + carryQ16) >> 16);
    }

    /**
     * The part that {@link #scaleQ16Floor} cut off, to be carried into the next scaling.
     *
     * <p><b>Range:</b> same arguments; result 0 to 65535.
     *
     * @param value the value that was scaled
     * @param factorQ16 the factor in units of 2^-16
     * @param carryQ16 the carry that was handed in
     * @return the remainder in units of 2^-16
     */
    public static int scaleQ16Remainder(long value, int factorQ16, int carryQ16) {
        return (int) (((value & 0xFFFF) * factorQ16 + carryQ16) & 0xFFFF);
    }

    /**
     * Narrows to 32 bits by clamping; the only way in which the core narrows a measured value.
     *
     * <p><b>Range:</b> any in; the result is symmetric, -(2^31-1) to 2^31-1, so that its negative
     * exists.
     *
     * @param value the value to narrow
     * @return the value, clamped
     */
    public static int clampToInt(long value) {
        if (value > Integer.MAX_VALUE) {
            return Integer.MAX_VALUE;
        }
        return value < -Integer.MAX_VALUE ? -Integer.MAX_VALUE : (int) value;
    }

    /**
     * Clamps into a closed interval.
     *
     * @param value the value
     * @param low lower end
     * @param high upper end, at least low
     * @return the nearest value of the interval
     */
    public static long clamp(long value, long low, long high) {
        if (value < low) {
            return low;
        }
        return value > high ? high : value;
    }

    /**
     * Adds and saturates, for sums that only grow.
     *
     * <p><b>Range:</b> both at most 2^62 in magnitude, the result too: one more addend, or a
     * negative, still fits.
     *
     * @param sum the sum so far
     * @param addend what to add
     * @return the sum, clamped to +-2^62
     */
    public static long saturatingAdd(long sum, long addend) {
        // Twice 2^62 is one more than fits: compare before adding.
        if (sum > 0 && addend > LARGEST_SUM - sum) {
            return LARGEST_SUM;
        }
        if (sum < 0 && addend < -LARGEST_SUM - sum) {
            return -LARGEST_SUM;
        }
        return clamp(sum + addend, -LARGEST_SUM, LARGEST_SUM);
    }

    /**
     * Multiplies two magnitudes and saturates.
     *
     * <p><b>Range:</b> both 0 or more, any size; the result is at most 2^62.
     *
     * @param one 0 or more
     * @param other 0 or more
     * @return the product, or 2^62 where it would be larger
     */
    public static long saturatingProduct(long one, long other) {
        return one > 0 && other > LARGEST_SUM / one ? LARGEST_SUM : one * other;
    }

    /**
     * A magnitude grown in a ratio, rounded up.
     *
     * <p><b>Range:</b> value 0 to 2^62, ratio of two figures below 2^31; the result saturates at
     * 2^62. The part below the old figure makes a product below 2^62.
     *
     * @param value 0 or more
     * @param oldFigure 1 or more
     * @param newFigure at least the old one
     * @return value x new / old
     */
    public static long grown(long value, long oldFigure, long newFigure) {
        long whole = saturatingProduct(value / oldFigure, newFigure);
        long part = (value % oldFigure * newFigure + oldFigure - 1) / oldFigure;
        return saturatingAdd(whole, part);
    }

    /**
     * Integer square root, rounded up, bit by bit: no division.
     *
     * <p><b>Range:</b> 0 to 2^62; result 0 to 2^31. At most 31 rounds, from the root's highest bit.
     *
     * @param value the square
     * @return the smallest root with root x root >= value
     */
    public static long squareRootCeiling(long value) {
        long root = 0;
        int highestBit = Math.min((63 - Long.numberOfLeadingZeros(value | 1)) >> 1, 30);
        for (long bit = 1L << highestBit; bit > 0; bit >>= 1) {
            long trial = root + bit;
            // All ones where the trial fits: a branch here is a coin toss for any processor.
            long fits = ~((value - trial * trial) >> 63);
            root += bit & fits;
        }
        return root * root < value ? root + 1 : root;
    }
}
