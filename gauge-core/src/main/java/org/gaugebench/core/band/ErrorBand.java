package org.gaugebench.core.band;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * The gauge's own uncertainty: running sums since the last anchor, and on demand the two
 * half-widths built from them. Nothing but additions happens each minute.
 *
 * <p>Each bound of the settings is taken as the half-width a of a rectangular distribution, whose
 * standard uncertainty is a / sqrt(3) (GUM, JCGM 100:2008, 4.3.7). Each is multiplied by its
 * sensitivity, the derivative of the state of charge by that input, in parts per million of the
 * capacity C:
 *
 * <pre>
 *  anchor          residual                      1
 *  offset          bound                         t / C
 *  converter step  half a step                   t / C
 *  gain            bound, both ways alike        |D| / C
 *  asymmetry       bound, opposite both ways     T / C
 *  efficiency      bound                         Q / C
 *  self-discharge  bound for a month at 20 degC  t in months, weighted by warmth
 *  capacity        bound, a part of C            |D| / C, see {@link #update}
 * </pre>
 *
 * <p>with t the time, T the charge moved either way, Q the charge put in (whole minutes' net), D
 * the change of the count, all since the anchor. The inputs are independent, so the terms add in
 * squares (GUM 5.1.2), and the root is multiplied by 2 / sqrt(3): coverage factor 2, about 95 %
 * (GUM 6.3.3). A single rectangular term is covered wholly (1.155 a), a sum of many to 95.4 %. Each
 * device keeps its offset and its gain for ever, so a term grows with time and not with its root,
 * and the terms of two instants are fully correlated: a device that leaves the band stays out.
 *
 * <p>Two things are no rectangle about the count. Current past the shunt can only make the truth
 * lower: its whole bound widens the lower side and nothing else. What nobody measured (samples
 * missing or at a rail, time without power) is a worst case, not a distribution: it is added whole
 * to both sides.
 *
 * <p>Every term, and the root, rounds up: the integers never make the band narrower. It is never
 * narrower than the figure it surrounds can tell, 1 ppm.
 */
public final class ErrorBand {
    /** Everything is possible. */
    public static final int WHOLE_PARTS_PER_MILLION = 1_000_000;

    /** A half-width from which on the figure says nothing: the state is "unknown". */
    public static final int UNKNOWN_FROM_PARTS_PER_MILLION = 400_000;

    private static final long MONTH_MILLIS = 2_592_000_000L;
    private static final long LONGEST_MILLIS = 1L << 39;
    private static final long LARGEST_NANOCOULOMBS = 1L << 62;
    private static final int COVERAGE_PER_MILLE = 1_155;
    private static final int WEIGHT_BITS = 8;
    private static final int WARMTH_AT_20_CELSIUS_Q8 = 256;

    /** The state of charge is cut off to whole ppm. */
    private static final int RESOLUTION_PARTS_PER_MILLION = 1;

    // Parameters.
    private final long nanocoulombsPerMillionth;
    private final long offsetMicroamps;
    private final long halfStepMicroamps;
    private final long lossPartsPerMillion;
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
        nanocoulombsPerMillionth = settings.get(Setting.CAPACITY) * 3_600;
        offsetMicroamps = settings.get(Setting.OFFSET_BOUND);
        halfStepMicroamps = (stepMicroamps + 1) / 2;
        lossPartsPerMillion = WHOLE_PARTS_PER_MILLION - settings.get(Setting.COULOMBIC_EFFICIENCY);
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
     * <p><b>Range:</b> any, 0 or more; product and sum saturate at 2^62.
     *
     * @param gapMillis how long
     * @param meanMicroamps the most that may have flowed on average, either way
     */
    public void addGap(long gapMillis, long meanMicroamps) {
        gapNanocoulombs =
                FixedMath.saturatingAdd(
                        gapNanocoulombs, FixedMath.saturatingProduct(gapMillis, meanMicroamps));
    }

    /**
     * Adds time without power: nothing was measured, and the battery went on discharging itself. At
     * what temperature is not known; 20 °C is taken.
     *
     * <p><b>Range:</b> any, 0 or more; time is clamped to 2^39 ms.
     *
     * @param offMillis how long
     * @param meanMicroamps the most that may have flowed on average, either way
     */
    public void addOffTime(long offMillis, long meanMicroamps) {
        addGap(offMillis, meanMicroamps);
        long clamped = Math.min(offMillis, LONGEST_MILLIS);
        warmMillisQ8 =
                Math.min(
                        warmMillisQ8 + clamped * WARMTH_AT_20_CELSIUS_Q8,
                        LONGEST_MILLIS << WEIGHT_BITS);
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
     * The capacity is another and the percentage was kept: what was uncertain in parts of the old
     * capacity is as uncertain in parts of the new one. Charges grow with it, and so does what the
     * standing currents may have moved, which goes to the unmeasured charge. A smaller capacity
     * widens every term by itself. What was counted since the anchor is another part of the new
     * capacity than of the old one; by that the kept percentage may be wrong: the residual grows.
     *
     * <p><b>Range:</b> capacities as {@link Setting#CAPACITY} allows; grown charges saturate at
     * 2^62.
     *
     * @param oldMilliampHours capacity under which the sums were taken; 0 or less changes nothing
     * @param newMilliampHours capacity of these settings
     */
    public void capacityChanged(long oldMilliampHours, long newMilliampHours) {
        if (oldMilliampHours <= 0 || newMilliampHours == oldMilliampHours) {
            return;
        }
        long moved = Math.abs(netNanocoulombs);
        widen(
                Parts.ceiling(moved, Math.min(oldMilliampHours, newMilliampHours))
                        - Parts.floor(moved, Math.max(oldMilliampHours, newMilliampHours)));
        if (newMilliampHours < oldMilliampHours) {
            return;
        }
        // The squares count with their coverage factor, the unmeasured charge whole.
        long squared = (offsetMicroamps + halfStepMicroamps) * COVERAGE_PER_MILLE / 1_000 + 1;
        long standing = FixedMath.saturatingProduct(squared + unmeasuredMicroamps, millis);
        long grownStanding = FixedMath.grown(standing, oldMilliampHours, newMilliampHours);
        long grownGap = FixedMath.grown(gapNanocoulombs, oldMilliampHours, newMilliampHours);
        gapNanocoulombs = FixedMath.saturatingAdd(grownGap, grownStanding - standing);
        long net = FixedMath.grown(Math.abs(netNanocoulombs), oldMilliampHours, newMilliampHours);
        netNanocoulombs = netNanocoulombs < 0 ? -net : net;
        grossNanocoulombs = FixedMath.grown(grossNanocoulombs, oldMilliampHours, newMilliampHours);
        inNanocoulombs = FixedMath.grown(inNanocoulombs, oldMilliampHours, newMilliampHours);
    }

    /**
     * Works out both sides for the present charge.
     *
     * <p>How far the count is from its anchor is worked out twice. The sums give it exactly while
     * no limit held the count. What is missing to full, but no more than what was moved, is right
     * after a full anchor even where surplus was cut off. The larger is taken: exact after a full
     * anchor and on the way up from an empty one, never too small.
     *
     * <p><b>Range:</b> products of a current with a time saturate at 2^62; ratios as in {@link
     * Parts#ratio}; eight terms of at most 1,000,000 ppm, the sum of their squares below 2^43.
     *
     * @param chargeNanocoulombs the count
     */
    public void update(long chargeNanocoulombs) {
        if (residualPartsPerMillion >= WHOLE_PARTS_PER_MILLION) {
            lowSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            highSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            return;
        }
        long in = parts(inNanocoulombs);
        long gross = parts(grossNanocoulombs);
        long change = changeParts(in);
        long missing = WHOLE_PARTS_PER_MILLION - chargeNanocoulombs / nanocoulombsPerMillionth;
        long moved = Math.max(change, Math.min(missing, gross));
        long squares =
                Parts.square(residualPartsPerMillion)
                        + Parts.square(flowTerm(offsetMicroamps))
                        + Parts.square(flowTerm(halfStepMicroamps))
                        + Parts.square(Parts.ratio(change, gainPartsPerMillion))
                        + Parts.square(Parts.ratio(gross, asymmetryPartsPerMillion))
                        + Parts.square(Parts.ratio(in, efficiencyPartsPerMillion))
                        + Parts.square(selfDischargeTerm())
                        + Parts.square(Parts.ratio(moved, capacityPartsPerMillion));
        long symmetric = FixedMath.squareRootCeiling(squares) * COVERAGE_PER_MILLE;
        long both =
                (symmetric + 999) / 1_000
                        + RESOLUTION_PARTS_PER_MILLION
                        + Parts.limited(parts(gapNanocoulombs));
        lowSidePartsPerMillion = (int) Parts.limited(both + flowTerm(unmeasuredMicroamps));
        highSidePartsPerMillion = (int) Parts.limited(both);
    }

    /** How far the count moved since the anchor, without its limits; 2 ppm make up for rounding. */
    private long changeParts(long inParts) {
        long net = netNanocoulombs / nanocoulombsPerMillionth;
        return Math.abs(net - Parts.ratio(inParts, lossPartsPerMillion)) + 2;
    }

    private long flowTerm(long microamps) {
        return Parts.limited(parts(FixedMath.saturatingProduct(microamps, millis)));
    }

    private long selfDischargeTerm() {
        long perMonthMillis = MONTH_MILLIS / 1_000_000;
        long monthsPerMillion =
                ((warmMillisQ8 >> WEIGHT_BITS) + perMonthMillis - 1) / perMonthMillis;
        return Parts.limited(Parts.ratio(monthsPerMillion, selfDischargePartsPerMillion));
    }

    /** Magnitude in ppm of the capacity, rounded up; at most 2^62 / 360,000 = 2^44. */
    private long parts(long nanocoulombs) {
        return (nanocoulombs + nanocoulombsPerMillionth - 1) / nanocoulombsPerMillionth;
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

    /** {@return residual of the last anchor, ppm of the capacity} */
    public long residualPartsPerMillion() {
        return residualPartsPerMillion;
    }

    /** {@return time since the last anchor, milliseconds} */
    public long millis() {
        return millis;
    }

    /** {@return net charge since the last anchor, nanocoulombs, positive into the battery} */
    public long netNanocoulombs() {
        return netNanocoulombs;
    }

    /** {@return charge moved either way since the last anchor, nanocoulombs} */
    public long grossNanocoulombs() {
        return grossNanocoulombs;
    }

    /** {@return charge put in since the last anchor, minute by minute net, nanocoulombs} */
    public long inNanocoulombs() {
        return inNanocoulombs;
    }

    /** {@return charge that may have moved unmeasured since the last anchor, nanocoulombs} */
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
     * Takes over sums that were saved, each clamped to what {@link #add} can reach.
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
        netNanocoulombs = FixedMath.clamp(savedNet, -LARGEST_NANOCOULOMBS, LARGEST_NANOCOULOMBS);
        grossNanocoulombs = FixedMath.clamp(savedGross, 0, LARGEST_NANOCOULOMBS);
        inNanocoulombs = FixedMath.clamp(savedIn, 0, LARGEST_NANOCOULOMBS);
        gapNanocoulombs = FixedMath.clamp(savedGap, 0, LARGEST_NANOCOULOMBS);
        warmMillisQ8 = FixedMath.clamp(savedWarmQ8, 0, LONGEST_MILLIS << WEIGHT_BITS);
    }
}
