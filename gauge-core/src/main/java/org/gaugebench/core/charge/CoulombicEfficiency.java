package org.gaugebench.core.charge;

import org.gaugebench.core.fixed.FixedMath;

/**
 * What part of a whole minute's net charge is stored.
 *
 * <p>Applied to the net of a minute and not to each sample: ripple about zero would otherwise lose
 * charge that never was put in. A net discharge is taken as it is.
 */
public final class CoulombicEfficiency {
    // Parameters.
    private final int efficiencyQ16;

    // State.
    private int remainderQ16;

    /**
     * Creates the stage.
     *
     * @param efficiencyPartsPerMillion 500,000 to 1,000,000
     */
    public CoulombicEfficiency(long efficiencyPartsPerMillion) {
        // derived: 65536 is exactly 1.0, so 100 % changes nothing
        efficiencyQ16 =
                (int) FixedMath.divideHalfAwayFromZero(efficiencyPartsPerMillion << 16, 1_000_000);
    }

    /**
     * The stored part of a minute, remainder carried.
     *
     * <p><b>Range:</b> |net| up to 2^47 nC (2147 A for a minute); the product is split, so nothing
     * overflows. Rounds down; the cut-off is carried, so that any number of minutes is wrong by
     * less than 1 nC in all.
     *
     * @param netNanocoulombs the minute's net charge
     * @return the part that counts
     */
    public long settle(long netNanocoulombs) {
        if (netNanocoulombs <= 0) {
            return netNanocoulombs;
        }
        long stored = FixedMath.scaleQ16Floor(netNanocoulombs, efficiencyQ16, remainderQ16);
        remainderQ16 = FixedMath.scaleQ16Remainder(netNanocoulombs, efficiencyQ16, remainderQ16);
        return stored;
    }

    /**
     * The stored part of a minute under way; changes nothing.
     *
     * <p><b>Range:</b> as {@link #settle}.
     *
     * @param netNanocoulombs net charge so far
     * @return the part that would count if the minute ended now
     */
    public long preview(long netNanocoulombs) {
        return netNanocoulombs <= 0
                ? netNanocoulombs
                : FixedMath.scaleQ16Floor(netNanocoulombs, efficiencyQ16, remainderQ16);
    }

    /**
     * Takes over what a floor before had cut off.
     *
     * @param savedRemainderQ16 any; only its 16 low bits are taken
     */
    public void resume(int savedRemainderQ16) {
        remainderQ16 = savedRemainderQ16 & 0xFFFF;
    }

    /**
     * What the floor has cut off so far.
     *
     * @return 0 to 65535, in nC/65536
     */
    public int remainderQ16() {
        return remainderQ16;
    }
}
