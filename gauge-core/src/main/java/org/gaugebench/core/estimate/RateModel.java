package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.Log2Table;

/**
 * How much of the charge can be had at a current and a temperature; for hours only, never for the
 * count. Peukert's law holds at one constant current and temperature and is no law of the state of
 * charge (Doerffel and Abu Sharkh, Journal of Power Sources 155, 2006): what a high current leaves
 * behind can still be had at a lower one.
 *
 * <p>Law and temperature say what part of a full battery comes out; the rest stays behind, and it
 * is the same charge whether the battery was full or half full when the current began. So what can
 * be had is the charge less that rest, and never a part of what is left: a battery that gives 55 of
 * 100 Ah and has given 40 has 15 to give.
 *
 * <p>With the rated hours H and capacity C the law is t = H x (C / (I x H))^k, that is t = C / (I x
 * f) with the factor f = (I / I0)^(k - 1) and I0 = C / H. The factor is held to at least one: below
 * the rated current nothing beyond the rated charge is credited. Charging has the factor one.
 */
public final class RateModel {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final int MILLIS_PER_HOUR = 3_600_000;
    private static final int PART_BITS = 30;

    private static final RateModel NONE =
            new RateModel(1, 1, FULL_PARTS_PER_MILLION, TemperatureCurve.FLAT);

    // Parameters.
    private final long capacityNanocoulombs;
    private final int log2RatedQ24;
    private final long exponentLessOnePartsPerMillion;
    private final TemperatureCurve temperature;

    /**
     * Declares the law.
     *
     * @param capacityNanocoulombs capacity at the rated hours, 1 to 2^62
     * @param ratedHours hours of the rating, at least 1; 20 for most lead-acid batteries
     * @param exponentPartsPerMillion Peukert exponent, 1,000,000 (no dependence) to 2,000,000
     * @param temperature dependence on temperature
     */
    public RateModel(
            long capacityNanocoulombs,
            int ratedHours,
            int exponentPartsPerMillion,
            TemperatureCurve temperature) {
        this.capacityNanocoulombs = capacityNanocoulombs;
        // nC / ms = uA; the logarithms are taken apart, so that small ratings keep their fraction.
        log2RatedQ24 =
                Log2Table.log2Q24(capacityNanocoulombs)
                        - Log2Table.log2Q24((long) Math.max(1, ratedHours) * MILLIS_PER_HOUR);
        exponentLessOnePartsPerMillion =
                Math.max(0, Math.min(exponentPartsPerMillion - FULL_PARTS_PER_MILLION, 1_000_000));
        this.temperature = temperature;
    }

    /**
     * A model without any dependence.
     *
     * @return factor one at every current and temperature
     */
    public static RateModel none() {
        return NONE;
    }

    /**
     * The factor by which a current counts for more than itself.
     *
     * <p><b>Range:</b> any current. The ratio's logarithm is within +-2^30, times 1e6 below 2^50.
     * Result at least 1.0; at most 2^31 x 2^24 = 2^55, at a ratio of 2^31 and exponent 2. Within
     * 0.001 % of the law for exponents up to 1.3. It never falls as the current grows.
     *
     * @param currentMicroamps positive into the battery
     * @return the factor with 24 fraction bits
     */
    public long factorQ24(int currentMicroamps) {
        if (currentMicroamps >= 0 || exponentLessOnePartsPerMillion == 0) {
            return Log2Table.ONE_Q24;
        }
        long ratioLog2 = Log2Table.log2Q24(-(long) currentMicroamps) - (long) log2RatedQ24;
        if (ratioLog2 <= 0) {
            return Log2Table.ONE_Q24;
        }
        return Log2Table.exp2Q24(
                (int) (ratioLog2 * exponentLessOnePartsPerMillion / FULL_PARTS_PER_MILLION));
    }

    /**
     * The charge that stays in the battery at this current and temperature.
     *
     * <p><b>Range:</b> the part that comes out has 30 bits and is at most one; the capacity is
     * split at bit 30, so each product stays below 2^62. What comes out is rounded down, so this is
     * rounded up; 0 to the capacity.
     *
     * @param currentMicroamps positive into the battery
     * @param millicelsius battery temperature, or the absent mark
     * @return nanocoulombs; 0 while charging
     */
    public long behindNanocoulombs(int currentMicroamps, int millicelsius) {
        if (currentMicroamps >= 0) {
            return 0;
        }
        long partQ30 =
                (1L << (PART_BITS + Log2Table.FRACTION_BITS))
                        / factorQ24(currentMicroamps)
                        * temperature.partsPerMillion(millicelsius)
                        / FULL_PARTS_PER_MILLION;
        long high = capacityNanocoulombs >> PART_BITS;
        long low = capacityNanocoulombs & ((1L << PART_BITS) - 1);
        return capacityNanocoulombs - high * partQ30 - ((low * partQ30) >> PART_BITS);
    }

    /**
     * What of a charge can be had at this current and temperature: the charge less what stays
     * behind.
     *
     * <p><b>Range:</b> charge up to 2^62; less than 0 reads as 0. 0 to the charge itself, and it
     * never falls as the charge rises.
     *
     * @param chargeNanocoulombs the charge
     * @param currentMicroamps positive into the battery
     * @param millicelsius battery temperature, or the absent mark
     * @return nanocoulombs
     */
    public long usableNanocoulombs(
            long chargeNanocoulombs, int currentMicroamps, int millicelsius) {
        long charge = Math.max(0, chargeNanocoulombs);
        return Math.max(0, charge - behindNanocoulombs(currentMicroamps, millicelsius));
    }
}
