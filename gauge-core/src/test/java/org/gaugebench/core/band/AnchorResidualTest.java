package org.gaugebench.core.band;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The count and an anchor combined: examples worked by hand. */
class AnchorResidualTest {
    /** 25 / (25 + 4) = 0.862; sqrt(25 x 4 / 29) = 1.85695 %, rounded up. */
    @Test
    void aGoodAnchorTakesMostOfTheWeight() {
        assertEquals(0.862, weight(50_000, 20_000), 0.0005);
        assertEquals(18_570, AnchorResidual.combined(50_000, 20_000));
    }

    /** 25 / (25 + 625) = 0.0385; sqrt(25 x 625 / 650) = 4.9029 %, rounded up. */
    @Test
    void anAnchorOnAFlatCurveIsHardlyHeard() {
        assertEquals(0.0385, weight(50_000, 250_000), 0.00005);
        assertEquals(49_030, AnchorResidual.combined(50_000, 250_000));
    }

    @Test
    void twoEqualOnesShareTheWeight() {
        assertEquals(32_768, AnchorResidual.weightQ16(30_000, 30_000));
        assertEquals(21_214, AnchorResidual.combined(30_000, 30_000));
    }

    @Test
    void aPerfectCountOrAnchorStaysPerfect() {
        assertEquals(0, AnchorResidual.weightQ16(0, 0));
        assertEquals(0, AnchorResidual.weightQ16(0, 20_000));
        assertEquals(65_536, AnchorResidual.weightQ16(20_000, 0));
        assertEquals(0, AnchorResidual.combined(0, 20_000));
        assertEquals(0, AnchorResidual.combined(20_000, 0));
        assertEquals(0, AnchorResidual.combined(0, 0));
    }

    /** Taken off the larger square, the weight's last bit alone would leave 3,906 ppm here. */
    @Test
    void anAnchorFarBetterThanTheCountKeepsItsOwnWidth() {
        assertEquals(1_000, AnchorResidual.combined(1_000_000, 1_000));
        assertEquals(1_000, AnchorResidual.combined(1_000, 1_000_000));
        assertEquals(1, AnchorResidual.combined(1_000_000, 1));
    }

    private static double weight(long count, long anchor) {
        return AnchorResidual.weightQ16(count, anchor) / 65_536.0;
    }
}
