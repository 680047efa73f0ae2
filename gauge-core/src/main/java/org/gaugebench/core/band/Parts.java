package org.gaugebench.core.band;

/** Arithmetic on parts per million of the capacity, rounded and limited to the safe side. */
final class Parts {
    private Parts() {}

    /**
     * A part of a value, rounded up.
     *
     * <p><b>Range:</b> value limited to 2^43, whose millionth part is above 1,000,000 still: with
     * at most 500,000 ppm below 2^62.
     */
    static long ratio(long value, long partsPerMillion) {
        return (Math.min(value, 1L << 43) * partsPerMillion + 999_999) / 1_000_000;
    }

    /**
     * A charge as a part of a capacity, cut off.
     *
     * <p><b>Range:</b> nC / (mAh 3.6e9 / 1e6); the divisor is at least 3,600, so 2^62 nC give less
     * than 2^51.
     */
    static long floor(long nanocoulombs, long milliampHours) {
        return nanocoulombs / (milliampHours * 3_600);
    }

    /** The same, rounded up. */
    static long ceiling(long nanocoulombs, long milliampHours) {
        return -Math.floorDiv(-nanocoulombs, milliampHours * 3_600);
    }

    static long limited(long partsPerMillion) {
        return Math.min(partsPerMillion, ErrorBand.WHOLE_PARTS_PER_MILLION);
    }

    /** Limited first: a term as large as the capacity says as much as a larger one. */
    static long square(long partsPerMillion) {
        long term = limited(partsPerMillion);
        return term * term;
    }
}
