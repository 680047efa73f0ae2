package org.gaugebench.core.band;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * The gauge's own uncertainty: six sums since the last anchor, and on demand the half-widths built
 * from them.
 *
 * <p>Every bound is taken as rectangular; the terms are independent, so they add in squares, and
 * the root is multiplied by 2 / sqrt(3) for a coverage of about 95 % (GUM, JCGM 100:2008, coverage
 * factor 2). What can only make the truth lower (current past the shunt) widens the lower side
 * alone; what was not measured at all (gaps, clipped samples, time without power) widens both.
 *
 * <p>All terms are in parts per million of the capacity: 64 bits hold the squares of any battery.
 */
public final class ErrorBand {
    /** Everything is possible. */
    public static final int WHOLE_PARTS_PER_MILLION = 1_000_000;

    /** A half-width from which on the figure says nothing: the state is "unknown". */
    public static final int UNKNOWN_FROM_PARTS_PER_MILLION = 400_000;

    private static final long MONTH_MILLIS = 2_592_000_000L;
    private static final long LONGEST_MILLIS = 1L << 39;
    private static final long LARGEST_NANOCOULOMBS = 1L << 61;
    private static final int COVERAGE_PER_MILLE = 1_155;
    private static final int WEIGHT_BITS = 8;

    // Parameters.
    private final long nanocoulombsPerPart;
    private final long offsetMicroamps;
    private final long gainPartsPerMillion;
    private final long asymmetryPartsPerMillion;
    private final long efficiencyPartsPerMillion;
    private final long selfDischargePartsPerMillion;
    private final long capacityPartsPerMillion;
    private final long unmeasuredMicroamps;
    private final long worstMicroamps;

    // State: the sums since the last anchor.
    private long residualPartsPerMillion = WHOLE_PARTS_PER_MILLION;
    private long millis;
    private long netNanocoulombs;
    private long grossNanocoulombs;
    private long inNanocoulombs;
    private long gapNanocoulombs;
    private long warmMillisQ8;

    // State: the last answer.
    private int lowSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
    private int highSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;

    /**
     * Derives the bounds.
     *
     * @param settings checked settings
     * @param stepMicroamps current of one converter step: a standing current may hide half of it
     */
    public ErrorBand(GaugeSettings settings, long stepMicroamps) {
        // derived: 1 mAh = 3.6e9 nC, a millionth of it 3,600
        nanocoulombsPerPart = settings.get(Setting.CAPACITY) * 3_600;
        offsetMicroamps = Math.max(settings.get(Setting.OFFSET_BOUND), (stepMicroamps + 1) / 2);
        gainPartsPerMillion = settings.get(Setting.GAIN_BOUND);
        asymmetryPartsPerMillion = settings.get(Setting.ASYMMETRY_BOUND);
        efficiencyPartsPerMillion = settings.get(Setting.EFFICIENCY_BOUND);
        selfDischargePartsPerMillion = settings.get(Setting.SELF_DISCHARGE_BOUND);
        capacityPartsPerMillion = settings.get(Setting.CAPACITY_BOUND);
        unmeasuredMicroamps = settings.get(Setting.UNMEASURED_BOUND);
        worstMicroamps = settings.get(Setting.SHUNT_RATED_CURRENT) * 1_000;
    }

    /**
     * Adds a stretch of time.
     *
     * <p><b>Range:</b> time is clamped to 2^39 ms (17 years), charges saturate at 2^62.
     *
     * @param stretchMillis its length
     * @param stretchInNanocoulombs what went in through the shunt
     * @param stretchOutNanocoulombs what went out, a positive figure
     * @param warmthQ8 self-discharge at this temperature over that at 20 °C, in 1/256
     */
    public void add(
            long stretchMillis,
            long stretchInNanocoulombs,
            long stretchOutNanocoulombs,
            int warmthQ8) {
        millis = Math.min(millis + stretchMillis, LONGEST_MILLIS);
        warmMillisQ8 =
                Math.min(warmMillisQ8 + stretchMillis * warmthQ8, LONGEST_MILLIS << WEIGHT_BITS);
        long net = stretchInNanocoulombs - stretchOutNanocoulombs;
        netNanocoulombs = FixedMath.saturatingAdd(netNanocoulombs, net);
        grossNanocoulombs =
                FixedMath.saturatingAdd(
                        grossNanocoulombs, stretchInNanocoulombs + stretchOutNanocoulombs);
        if (net > 0) {
            inNanocoulombs = FixedMath.saturatingAdd(inNanocoulombs, net);
        }
    }

    /**
     * Adds time in which nothing was measured.
     *
     * <p><b>Range:</b> a product above 2^61 is taken as 2^61, sixty times the largest capacity, so
     * that two of them still fit.
     *
     * @param gapMillis how long
     * @param meanMicroamps the most that may have flowed on average, either way
     */
    public void addGap(long gapMillis, long meanMicroamps) {
        long nanocoulombs = limitedProduct(gapMillis, meanMicroamps);
        gapNanocoulombs = FixedMath.saturatingAdd(gapNanocoulombs, nanocoulombs);
    }

    /**
     * Adds time in which no sample came or the sample stood at a rail: the shunt's rated current
     * may have flowed on top of what was counted.
     *
     * @param gapMillis how long
     */
    public void addUnmeasured(long gapMillis) {
        addGap(gapMillis, worstMicroamps);
    }

    /**
     * An anchor: the count is now known to its residual and every sum starts again.
     *
     * @param newResidualPartsPerMillion half-width of the anchor, in ppm of the capacity
     */
    public void anchor(long newResidualPartsPerMillion) {
        residualPartsPerMillion = newResidualPartsPerMillion;
        millis = 0;
        netNanocoulombs = 0;
        grossNanocoulombs = 0;
        inNanocoulombs = 0;
        gapNanocoulombs = 0;
        warmMillisQ8 = 0;
    }

    /** Nothing is known any more. */
    public void forget() {
        anchor(WHOLE_PARTS_PER_MILLION);
    }

    /**
     * Widens the residual itself: for a change that the sums cannot describe.
     *
     * @param partsPerMillion how much to add
     */
    public void widen(long partsPerMillion) {
        residualPartsPerMillion =
                Math.min(residualPartsPerMillion + partsPerMillion, WHOLE_PARTS_PER_MILLION);
    }

    /**
     * Works out both sides for the present charge.
     *
     * <p><b>Range:</b> every term is limited to 1,000,000 ppm, its square to 1e12, seven of them to
     * 2^43. Offset: half a step of the coarsest converter is 48.8 A, which times 2^39 ms would pass
     * 2^63: the product is limited. Others: sums in ppm of the capacity times ppm, limited before
     * the product.
     *
     * @param chargeNanocoulombs the count
     */
    public void update(long chargeNanocoulombs) {
        if (residualPartsPerMillion >= WHOLE_PARTS_PER_MILLION) {
            lowSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            highSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            return;
        }
        long missing = WHOLE_PARTS_PER_MILLION - parts(chargeNanocoulombs);
        long squares =
                square(residualPartsPerMillion)
                        + square(offsetTerm())
                        + square(ratio(parts(Math.abs(netNanocoulombs)), gainPartsPerMillion))
                        + square(ratio(parts(grossNanocoulombs), asymmetryPartsPerMillion))
                        + square(ratio(parts(inNanocoulombs), efficiencyPartsPerMillion))
                        + square(selfDischargeTerm())
                        + square(ratio(missing, capacityPartsPerMillion));
        long symmetric = FixedMath.squareRootCeiling(squares) * COVERAGE_PER_MILLE / 1_000;
        long gap = limited(parts(gapNanocoulombs));
        long unmeasured = limited(parts(limitedProduct(millis, unmeasuredMicroamps)));
        lowSidePartsPerMillion = (int) limited(symmetric + gap + unmeasured);
        highSidePartsPerMillion = (int) limited(symmetric + gap);
    }

    private long offsetTerm() {
        return limited(parts(limitedProduct(millis, offsetMicroamps)));
    }

    /** Time times current, both at least 0, taken as 2^61 nC where it is more. */
    private static long limitedProduct(long milliseconds, long microamps) {
        return milliseconds > LARGEST_NANOCOULOMBS / Math.max(microamps, 1)
                ? LARGEST_NANOCOULOMBS
                : milliseconds * microamps;
    }

    private long selfDischargeTerm() {
        long monthsPerMillion = (warmMillisQ8 >> WEIGHT_BITS) / (MONTH_MILLIS / 1_000_000);
        return ratio(monthsPerMillion, selfDischargePartsPerMillion);
    }

    private long parts(long nanocoulombs) {
        return nanocoulombs / nanocoulombsPerPart;
    }

    /** value x ppm / 1e6, the value limited to 1e9 so that the product stays below 2^60. */
    private static long ratio(long value, long partsPerMillion) {
        return limited(Math.min(value, 1_000_000_000L) * partsPerMillion / 1_000_000);
    }

    private static long limited(long partsPerMillion) {
        return Math.min(partsPerMillion, WHOLE_PARTS_PER_MILLION);
    }

    private static long square(long partsPerMillion) {
        return partsPerMillion * partsPerMillion;
    }

    /**
     * How far the truth may lie under the count.
     *
     * @return ppm of the capacity, at the last update
     */
    public int lowSidePartsPerMillion() {
        return lowSidePartsPerMillion;
    }

    /**
     * How far the truth may lie above the count.
     *
     * @return ppm of the capacity, at the last update
     */
    public int highSidePartsPerMillion() {
        return highSidePartsPerMillion;
    }

    /**
     * Whether the figure says nothing any more.
     *
     * @return true when a side reaches {@value #UNKNOWN_FROM_PARTS_PER_MILLION} ppm
     */
    public boolean isUnknown() {
        return lowSidePartsPerMillion >= UNKNOWN_FROM_PARTS_PER_MILLION
                || highSidePartsPerMillion >= UNKNOWN_FROM_PARTS_PER_MILLION;
    }

    /**
     * Residual of the last anchor.
     *
     * @return ppm of the capacity
     */
    public long residualPartsPerMillion() {
        return residualPartsPerMillion;
    }

    /**
     * Time since the last anchor.
     *
     * @return milliseconds
     */
    public long millis() {
        return millis;
    }

    /**
     * Net charge since the last anchor.
     *
     * @return nanocoulombs, positive into the battery
     */
    public long netNanocoulombs() {
        return netNanocoulombs;
    }

    /**
     * Charge moved either way since the last anchor.
     *
     * @return nanocoulombs
     */
    public long grossNanocoulombs() {
        return grossNanocoulombs;
    }

    /**
     * Charge put in since the last anchor, minute by minute net.
     *
     * @return nanocoulombs
     */
    public long inNanocoulombs() {
        return inNanocoulombs;
    }

    /**
     * Charge that may have moved unmeasured since the last anchor.
     *
     * @return nanocoulombs
     */
    public long gapNanocoulombs() {
        return gapNanocoulombs;
    }

    /**
     * Time since the last anchor, weighted by the warmth of the battery.
     *
     * @return 1/256 milliseconds
     */
    public long warmMillisQ8() {
        return warmMillisQ8;
    }

    /**
     * Takes over sums that were saved.
     *
     * @param savedResidual ppm
     * @param savedMillis time
     * @param savedNet nanocoulombs
     * @param savedGross nanocoulombs
     * @param savedIn nanocoulombs
     * @param savedGap nanocoulombs
     * @param savedWarmQ8 1/256 ms
     */
    public void resume(
            long savedResidual,
            long savedMillis,
            long savedNet,
            long savedGross,
            long savedIn,
            long savedGap,
            long savedWarmQ8) {
        residualPartsPerMillion = FixedMath.clamp(savedResidual, 0, WHOLE_PARTS_PER_MILLION);
        millis = FixedMath.clamp(savedMillis, 0, LONGEST_MILLIS);
        netNanocoulombs = savedNet;
        grossNanocoulombs = Math.max(savedGross, 0);
        inNanocoulombs = Math.max(savedIn, 0);
        gapNanocoulombs = Math.max(savedGap, 0);
        warmMillisQ8 = FixedMath.clamp(savedWarmQ8, 0, LONGEST_MILLIS << WEIGHT_BITS);
    }
}
