package org.gaugebench.core.readout;

import org.gaugebench.core.port.Readout;

/**
 * A percentage for a display: never more than there is, 100 only when full is proven, 0 only when
 * empty, and no flicker between two figures.
 *
 * <p>It falls at once and rises only when half a percent beyond the next figure is reached. A
 * proven 100 stands until half a percent has left: the noise of a full battery is no news.
 */
public final class ShownPercent {
    private static final int PARTS_PER_PERCENT = 10_000;
    private static final int HYSTERESIS_PARTS_PER_MILLION = PARTS_PER_PERCENT / 2;
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final int FULL_PERCENT = 100;

    // State.
    private int percent = Readout.NOT_KNOWN;

    /** Creates a display that shows "not known". */
    public ShownPercent() {}

    /**
     * Takes a state of charge.
     *
     * @param partsPerMillion state of charge, 0 to 1,000,000, or {@link Readout#NOT_KNOWN}
     * @param fullProven whether full is proven and nothing was taken out since
     */
    public void update(int partsPerMillion, boolean fullProven) {
        if (partsPerMillion < 0) {
            percent = Readout.NOT_KNOWN;
        } else if (partsPerMillion == 0) {
            percent = 0;
        } else if (fullProven && partsPerMillion >= leastForFull()) {
            percent = FULL_PERCENT;
        } else {
            int floor = partsPerMillion / PARTS_PER_PERCENT;
            int held = Math.max(1, Math.min(floor, FULL_PERCENT - 1));
            // One figure up needs half a percent more; several at once are no flicker.
            boolean flicker =
                    percent > 0
                            && held == percent + 1
                            && partsPerMillion
                                    < held * PARTS_PER_PERCENT + HYSTERESIS_PARTS_PER_MILLION;
            percent = flicker ? percent : held;
        }
    }

    private int leastForFull() {
        return percent == FULL_PERCENT
                ? FULL_PARTS_PER_MILLION - HYSTERESIS_PARTS_PER_MILLION
                : FULL_PARTS_PER_MILLION;
    }

    /**
     * The figure to show.
     *
     * @return 0 to 100, or {@link Readout#NOT_KNOWN}
     */
    public int percent() {
        return percent;
    }
}
