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
     * <p><b>Range:</b> as above; P R would be 1e24, so the smaller square is scaled by the weight
     * of the larger instead.
     *
     * @param countPartsPerMillion half-width of the count
     * @param anchorPartsPerMillion half-width of the anchor
     * @return never above the smaller of the two plus one
     */
    public static long combined(long countPartsPerMillion, long anchorPartsPerMillion) {
        long p = countPartsPerMillion * countPartsPerMillion;
        long weightQ16 = weightQ16(countPartsPerMillion, anchorPartsPerMillion);
        long square = p - FixedMath.scaleQ16Floor(p, (int) weightQ16, 0);
        return FixedMath.squareRootCeiling(square);
    }
}
