package org.gaugebench.core.band;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * The interval in which the true state of charge lies: the {@link ErrorBand} around the count,
 * clipped by what one-sided facts leave.
 */
public final class StateBand {
    private static final int WHOLE_PARTS_PER_MILLION = ErrorBand.WHOLE_PARTS_PER_MILLION;

    // Parameters.
    private final ErrorBand sums;
    private final OneSidedFact atLeast;
    private final OneSidedFact atMost;

    // State: the last answer.
    private int lowSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
    private int highSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
    private int lowerEdgePartsPerMillion;
    private int upperEdgePartsPerMillion = WHOLE_PARTS_PER_MILLION;

    /**
     * Creates a band that knows nothing.
     *
     * @param settings checked settings
     * @param stepMicroamps current of one converter step
     */
    public StateBand(GaugeSettings settings, long stepMicroamps) {
        sums = new ErrorBand(settings, stepMicroamps);
        atLeast = new OneSidedFact(settings, stepMicroamps);
        atMost = new OneSidedFact(settings, stepMicroamps);
    }

    /**
     * Time passes; as {@link ErrorBand#add}.
     *
     * @param millis length
     * @param in nanocoulombs in
     * @param out nanocoulombs out
     * @param warmthQ8 warmth
     */
    public void add(long millis, long in, long out, int warmthQ8) {
        sums.add(millis, in, out, warmthQ8);
        atLeast.add(millis, in, out, warmthQ8);
        atMost.add(millis, in, out, warmthQ8);
    }

    /**
     * Time passes unmeasured; as {@link ErrorBand#addUnmeasured}.
     *
     * @param millis length
     */
    public void addUnmeasured(long millis) {
        sums.addUnmeasured(millis);
        atLeast.addUnmeasured(millis);
        atMost.addUnmeasured(millis);
    }

    /**
     * Time passed without power; as {@link ErrorBand#addOffTime}. Facts from before do not survive
     * it.
     *
     * @param millis length
     * @param meanMicroamps most mean current
     */
    public void addOffTime(long millis, long meanMicroamps) {
        sums.addOffTime(millis, meanMicroamps);
        dropFacts();
    }

    /**
     * The count was set to an anchor.
     *
     * @param residualPartsPerMillion its half-width
     */
    public void anchor(long residualPartsPerMillion) {
        sums.anchor(residualPartsPerMillion);
        dropFacts();
    }

    /** Nothing is known any more. */
    public void forget() {
        sums.forget();
        dropFacts();
    }

    private void dropFacts() {
        atLeast.drop();
        atMost.drop();
    }

    /**
     * Two facts: the truth lies between these bounds. A bound on the wrong side of the count is
     * taken as the count itself: a fact clips the band and moves nothing.
     *
     * @param shownPartsPerMillion the count
     * @param lowest lower bound, ppm
     * @param highest upper bound, ppm
     */
    public void clip(int shownPartsPerMillion, int lowest, int highest) {
        if (lowest > 0) {
            atLeast.state(Math.max(shownPartsPerMillion - lowest, 0));
        }
        if (highest < WHOLE_PARTS_PER_MILLION) {
            atMost.state(Math.max(highest - shownPartsPerMillion, 0));
        }
    }

    /**
     * Works out the edges for the present count. Where nothing is known, facts do not help: the
     * count that they would clip the band of says nothing.
     *
     * @param shownPartsPerMillion the count in ppm
     * @param chargeNanocoulombs the same in nanocoulombs
     */
    public void update(int shownPartsPerMillion, long chargeNanocoulombs) {
        sums.update(chargeNanocoulombs);
        if (sums.residualPartsPerMillion() >= WHOLE_PARTS_PER_MILLION) {
            lowSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            highSidePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            lowerEdgePartsPerMillion = 0;
            upperEdgePartsPerMillion = WHOLE_PARTS_PER_MILLION;
            return;
        }
        lowSidePartsPerMillion = atLeast.clipLow(sums.lowSidePartsPerMillion(), chargeNanocoulombs);
        highSidePartsPerMillion =
                atMost.clipHigh(sums.highSidePartsPerMillion(), chargeNanocoulombs);
        lowerEdgePartsPerMillion =
                (int)
                        FixedMath.clamp(
                                shownPartsPerMillion - lowSidePartsPerMillion,
                                0,
                                WHOLE_PARTS_PER_MILLION);
        upperEdgePartsPerMillion =
                (int)
                        FixedMath.clamp(
                                shownPartsPerMillion + highSidePartsPerMillion,
                                0,
                                WHOLE_PARTS_PER_MILLION);
    }

    /**
     * Whether the figure says nothing any more.
     *
     * @return true when either side is as wide as {@link ErrorBand#UNKNOWN_FROM_PARTS_PER_MILLION}
     */
    public boolean isUnknown() {
        return halfWidthPartsPerMillion() >= ErrorBand.UNKNOWN_FROM_PARTS_PER_MILLION;
    }

    /**
     * The wider side.
     *
     * @return ppm of the capacity
     */
    public int halfWidthPartsPerMillion() {
        return Math.max(lowSidePartsPerMillion, highSidePartsPerMillion);
    }

    /**
     * Lowest state of charge that is possible.
     *
     * @return 0 to 1,000,000
     */
    public int lowerEdgePartsPerMillion() {
        return lowerEdgePartsPerMillion;
    }

    /**
     * Highest state of charge that is possible.
     *
     * @return 0 to 1,000,000
     */
    public int upperEdgePartsPerMillion() {
        return upperEdgePartsPerMillion;
    }

    /**
     * The sums behind the band.
     *
     * @return this band's own, live
     */
    public ErrorBand sums() {
        return sums;
    }
}
