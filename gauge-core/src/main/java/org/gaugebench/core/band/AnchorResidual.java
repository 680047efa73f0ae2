package org.gaugebench.core.band;

import org.gaugebench.core.fixed.FixedMath;

/**
 * Combines what the count says with what an anchor says, each with its own uncertainty: the weight
 * of the anchor is P / (P + R), with P and R the squares of the two half-widths.
 *
 * <p>A bad anchor thus hardly moves a good count: on a flat voltage curve the arithmetic itself
 * says "don't bother", and no special case is needed.
 */
public final class AnchorResidual {
    private static final int WEIGHT_BITS = 16;

    private AnchorResidual() {}

    /**
     * Weight of the anchor.
     *
     * <p><b>Range:</b> half-widths 0 to 1,000,000 ppm; squares to 1e12, times 2^16 below 2^57.
     *
     * @param countPartsPerMillion half-width of the count
     * @param anchorPartsPerMillion half-width of the anchor
     * @return 0 to 65536, in 1/65536
     */
    public static int weightQ16(long countPartsPerMillion, long anchorPartsPerMillion) {
        long p = countPartsPerMillion * countPartsPerMillion;
        long r = anchorPartsPerMillion * anchorPartsPerMillion;
        return p + r == 0 ? 0 : (int) ((p << WEIGHT_BITS) / (p + r));
    }

    /**
     * Half-width after the combination: sqrt(P R / (P + R)), rounded up.
     *
     * <p><b>Range:</b> as above. P R would be 1e24, so the smaller square S is taken and S x weight
     * of the larger is taken off it: S - S S / (S + L) is the same. The weight is cut off, so the
     * result is never too narrow; it is too wide by at most 2^-17 of itself and 1 ppm.
     *
     * @param countPartsPerMillion half-width of the count
     * @param anchorPartsPerMillion half-width of the anchor
     * @return never above the smaller of the two
     */
    public static long combined(long countPartsPerMillion, long anchorPartsPerMillion) {
        long smaller = Math.min(countPartsPerMillion, anchorPartsPerMillion);
        long larger = Math.max(countPartsPerMillion, anchorPartsPerMillion);
        long square = smaller * smaller;
        long cut = FixedMath.scaleQ16Floor(square, weightQ16(smaller, larger), 0);
        return FixedMath.squareRootCeiling(square - cut);
    }
}
