package org.gaugebench.core.charge;

/** Charge as a part of the capacity. */
public final class StateOfCharge {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;

    private StateOfCharge() {}

    /**
     * Parts per million of the capacity, rounded down.
     *
     * <p><b>Range:</b> divides by a millionth of the capacity: {@code charge x 1,000,000} would
     * overflow above 2.56 Ah. A whole number of mAh makes the millionth exact (3,600 nC each).
     *
     * @param chargeNanocoulombs 0 to capacity
     * @param capacityNanocoulombs at least 1,000,000
     * @return 0 to 1,000,000
     */
    public static int partsPerMillion(long chargeNanocoulombs, long capacityNanocoulombs) {
        long parts = chargeNanocoulombs / (capacityNanocoulombs / FULL_PARTS_PER_MILLION);
        return (int) Math.min(parts, FULL_PARTS_PER_MILLION);
    }

    /**
     * The charge of a part of the capacity.
     *
     * <p><b>Range:</b> as above; at most the capacity.
     *
     * @param partsPerMillion 0 to 1,000,000
     * @param capacityNanocoulombs at least 1,000,000
     * @return nanocoulombs
     */
    public static long nanocoulombs(long partsPerMillion, long capacityNanocoulombs) {
        return capacityNanocoulombs / FULL_PARTS_PER_MILLION * partsPerMillion;
    }
}
