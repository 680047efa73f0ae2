package org.gaugebench.core.band;

import org.gaugebench.core.settings.GaugeSettings;

/**
 * A fact that bounds the truth on one side only, such as "rested this high, it holds at least 80
 * %". It clips the band and never moves the count.
 *
 * <p>From the moment of the fact the bound is as uncertain as the counting since then: a band of
 * its own with residual 0 grows beside the main one.
 */
public final class OneSidedFact {
    // Parameters.
    private final ErrorBand growth;

    // State.
    private boolean set;
    private long distancePartsPerMillion;
    private long reachPartsPerMillion;

    /**
     * Creates the absence of a fact.
     *
     * @param settings checked settings
     * @param stepMicroamps as for {@link ErrorBand}
     */
    public OneSidedFact(GaugeSettings settings, long stepMicroamps) {
        growth = new ErrorBand(settings, stepMicroamps);
    }

    /**
     * States the fact. A weaker one than what the last update still left is not taken: it would
     * throw knowledge away.
     *
     * @param distance how far the bound lies from the count at this moment, ppm, 0 or more
     */
    public void state(long distance) {
        if (set && reachPartsPerMillion <= distance) {
            return;
        }
        set = true;
        distancePartsPerMillion = distance;
        reachPartsPerMillion = distance;
        growth.anchor(0);
    }

    /** An anchor or a loss of knowledge makes the fact pointless. */
    public void drop() {
        set = false;
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
        if (set) {
            growth.add(millis, in, out, warmthQ8);
        }
    }

    /**
     * Time passes unmeasured; as {@link ErrorBand#addUnmeasured}.
     *
     * @param millis length
     */
    public void addUnmeasured(long millis) {
        if (set) {
            growth.addUnmeasured(millis);
        }
    }

    /**
     * Clips the lower side of a band.
     *
     * @param lowSidePartsPerMillion the band's own lower side
     * @param chargeNanocoulombs the count
     * @return the smaller of it and what the fact leaves
     */
    public int clipLow(int lowSidePartsPerMillion, long chargeNanocoulombs) {
        if (!set) {
            return lowSidePartsPerMillion;
        }
        growth.update(chargeNanocoulombs);
        reachPartsPerMillion = distancePartsPerMillion + growth.lowSidePartsPerMillion();
        return (int) Math.min(lowSidePartsPerMillion, reachPartsPerMillion);
    }

    /**
     * Clips the upper side of a band.
     *
     * @param highSidePartsPerMillion the band's own upper side
     * @param chargeNanocoulombs the count
     * @return the smaller of it and what the fact leaves
     */
    public int clipHigh(int highSidePartsPerMillion, long chargeNanocoulombs) {
        if (!set) {
            return highSidePartsPerMillion;
        }
        growth.update(chargeNanocoulombs);
        reachPartsPerMillion = distancePartsPerMillion + growth.highSidePartsPerMillion();
        return (int) Math.min(highSidePartsPerMillion, reachPartsPerMillion);
    }
}
