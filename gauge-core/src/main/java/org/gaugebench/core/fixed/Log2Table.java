package org.gaugebench.core.fixed;

/**
 * Logarithm and power of two on integers: two tables of 257 entries and a straight line between
 * neighbours.
 *
 * <p>The tables are computed when the class is loaded, by integer square roots and by repeated
 * squaring with 62 fraction bits, and rounded once to 30. A port may print them as constants. The
 * straight line is wrong by at most 1/8 x (1/256)^2 x the largest second derivative: 2.8e-6 in the
 * logarithm, 1.9e-6 relative in the power.
 */
public final class Log2Table {
    /** Fraction bits of logarithms and of powers. */
    public static final int FRACTION_BITS = 24;

    /** 1.0 with {@link #FRACTION_BITS} fraction bits. */
    public static final int ONE_Q24 = 1 << FRACTION_BITS;

    /** The natural logarithm of two: 0.693147180559945 x 2^24, rounded. */
    public static final int LN2_Q24 = 11_629_080;

    private static final int INDEX_BITS = 8;
    private static final int ENTRIES = (1 << INDEX_BITS) + 1;
    private static final int TABLE_BITS = 30;
    private static final int EXACT_BITS = 62;
    private static final long EXACT_ONE = 1L << EXACT_BITS;
    private static final int SMALLEST_EXPONENT_Q24 = -((FRACTION_BITS + 1) << FRACTION_BITS);
    private static final int LARGEST_EXPONENT_Q24 = 37 << FRACTION_BITS;

    /** Entry i is log2(1 + i/256), 0 to 1 with 30 fraction bits. */
    private static final int[] LOGARITHMS_Q30 = logarithms(new int[ENTRIES]);

    /** Entry i is 2^(i/256) - 1, 0 to 1 with 30 fraction bits. */
    private static final int[] POWERS_Q30 = powers(new int[ENTRIES]);

    private Log2Table() {}

    /**
     * The logarithm to base two.
     *
     * <p><b>Range:</b> value 1 to 2^63-1; below 1 reads as 1. The mantissa is cut to 30 bits
     * (relative 9e-10) and the result rounded down to 2^-24. Result 0 to 63 x 2^24, below 2^30;
     * wrong by at most 3e-6; it never falls as the value rises.
     *
     * @param value what to take the logarithm of
     * @return log2(value) with 24 fraction bits
     */
    public static int log2Q24(long value) {
        long positive = Math.max(value, 1);
        int exponent = 63 - Long.numberOfLeadingZeros(positive);
        // The leading one is shifted out; what stays are 30 bits of mantissa.
        long mantissa = ((positive << (62 - exponent)) - EXACT_ONE) >>> (EXACT_BITS - TABLE_BITS);
        return (exponent << FRACTION_BITS)
                + (between(LOGARITHMS_Q30, mantissa) >> (TABLE_BITS - FRACTION_BITS));
    }

    /**
     * Two to the power of a fraction.
     *
     * <p><b>Range:</b> exponent clipped to -25 to 37, so the result is 0 to 2^61. Relative error at
     * most 2e-6 for results of at least 1; below, the 24 fraction bits are the limit. Rounded down;
     * it never falls as the exponent rises.
     *
     * @param exponentQ24 the exponent with 24 fraction bits
     * @return 2^exponent with 24 fraction bits
     */
    public static long exp2Q24(int exponentQ24) {
        int clipped = Math.max(SMALLEST_EXPONENT_Q24, Math.min(exponentQ24, LARGEST_EXPONENT_Q24));
        int whole = clipped >> FRACTION_BITS;
        long fraction = (long) (clipped & (ONE_Q24 - 1)) << (TABLE_BITS - FRACTION_BITS);
        long mantissaQ30 = (1L << TABLE_BITS) + between(POWERS_Q30, fraction);
        int shift = whole - (TABLE_BITS - FRACTION_BITS);
        return shift >= 0 ? mantissaQ30 << shift : mantissaQ30 >> -shift;
    }

    /** The straight line between two entries, at a place with 30 fraction bits. */
    private static int between(int[] table, long placeQ30) {
        int index = (int) (placeQ30 >> (TABLE_BITS - INDEX_BITS));
        long within = placeQ30 & ((1L << (TABLE_BITS - INDEX_BITS)) - 1);
        long rise = (long) table[index + 1] - table[index];
        return table[index] + (int) ((rise * within) >> (TABLE_BITS - INDEX_BITS));
    }

    private static int[] logarithms(int[] table) {
        for (int i = 0; i < ENTRIES - 1; i++) {
            table[i] = logarithmQ30(EXACT_ONE + ((long) i << (EXACT_BITS - INDEX_BITS)));
        }
        table[ENTRIES - 1] = 1 << TABLE_BITS;
        return table;
    }

    /** One bit a squaring: 1 &lt;= x &lt; 2; if x squared is at least 2, the next bit is set. */
    private static int logarithmQ30(long startQ62) {
        long x = startQ62;
        long result = 0;
        for (int bit = 0; bit <= TABLE_BITS; bit++) {
            long squareQ60 = Math.multiplyHigh(x, x);
            boolean set = squareQ60 >= EXACT_ONE >> 1;
            result = (result << 1) + (set ? 1 : 0);
            x = set ? squareQ60 << 1 : squareQ60 << 2;
        }
        // One bit more than is kept, so that the last one is rounded.
        return (int) ((result + 1) >> 1);
    }

    private static int[] powers(int[] table) {
        for (int i = 0; i < ENTRIES - 1; i++) {
            long product = EXACT_ONE;
            long root = EXACT_ONE;
            for (int bit = INDEX_BITS - 1; bit >= 0; bit--) {
                // The root of the root before; the first is the square root of two.
                root = bit == INDEX_BITS - 1 ? rootQ62(EXACT_ONE >> 1) : rootQ62(root >> 2);
                if (((i >> bit) & 1) == 1) {
                    product = Math.multiplyHigh(product, root) << 2;
                }
            }
            long half = 1L << (EXACT_BITS - TABLE_BITS - 1);
            table[i] = (int) ((product - EXACT_ONE + half) >> (EXACT_BITS - TABLE_BITS));
        }
        table[ENTRIES - 1] = 1 << TABLE_BITS;
        return table;
    }

    /** The largest r with 62 fraction bits whose square does not exceed the value, bit by bit. */
    private static long rootQ62(long valueQ60) {
        long root = 0;
        for (long bit = EXACT_ONE; bit > 0; bit >>= 1) {
            long candidate = root | bit;
            if (Math.multiplyHigh(candidate, candidate) <= valueQ60) {
                root = candidate;
            }
        }
        return root;
    }
}
