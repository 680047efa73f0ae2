package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.COVERAGE;
import static org.gaugebench.core.band.BandRig.DAY_MILLIS;
import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.gaugebench.core.band.BandRig.ampHours;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** The interval around the count, and what facts leave of it. */
class StateBandTest {
    private static final int WHOLE = 1_000_000;
    private static final int SHOWN = 600_000;
    private static final long CHARGE = ampHours(60);

    /** See {@link BandRig#ROUNDING}; 0.03 % of the widest side here, 350,000 ppm, on top. */
    private static final double ROUNDING = BandRig.ROUNDING + 105;

    private final StateBand band = new StateBand(settings(), 0);

    private static GaugeSettings settings() {
        return BandRig.exact().set(Setting.OFFSET_BOUND, 10_000).build();
    }

    private void assertEdges(double lower, double upper) {
        band.update(SHOWN, CHARGE);
        assertEquals(lower, band.lowerEdgePartsPerMillion(), ROUNDING);
        assertEquals(upper, band.upperEdgePartsPerMillion(), ROUNDING);
    }

    @Test
    void nothingIsKnownAtFirst() {
        assertEdges(0, WHOLE);
        assertTrue(band.isUnknown());
        assertEquals(WHOLE, band.halfWidthPartsPerMillion());
    }

    @Test
    void theEdgesLieAroundTheCountAndStopAtEmptyAndFull() {
        band.anchor(100_000);
        assertEdges(SHOWN - 100_000 * COVERAGE, SHOWN + 100_000 * COVERAGE);
        band.update(950_000, ampHours(95));
        assertEquals(WHOLE, band.upperEdgePartsPerMillion());
        band.update(50_000, ampHours(5));
        assertEquals(0, band.lowerEdgePartsPerMillion());
        assertEquals(100_000 * COVERAGE, band.halfWidthPartsPerMillion(), ROUNDING);
    }

    @Test
    void factsClipBothSidesAndMoveNothing() {
        band.anchor(300_000);
        band.clip(SHOWN, 550_000, 900_000);
        assertEdges(550_000, 900_000);
        assertEquals(0, band.sums().netNanocoulombs());
        assertEquals(300_000, band.sums().residualPartsPerMillion());
        assertFalse(band.isUnknown());
    }

    @Test
    void aFactOnOneSideLeavesTheOther() {
        band.anchor(300_000);
        band.clip(SHOWN, 0, 700_000);
        assertEdges(SHOWN - 300_000 * COVERAGE, 700_000);
        band.clip(SHOWN, 500_000, WHOLE);
        assertEdges(500_000, 700_000);
    }

    @Test
    void aFactOutsideTheBandChangesNothing() {
        band.anchor(100_000);
        band.clip(SHOWN, 100_000, 990_000);
        assertEdges(SHOWN - 100_000 * COVERAGE, SHOWN + 100_000 * COVERAGE);
    }

    /** Rested at 80 % at least, while the count says 60: the count itself is the bound. */
    @Test
    void aFactOnTheWrongSideIsTakenAsTheCount() {
        band.anchor(300_000);
        band.clip(SHOWN, 800_000, WHOLE);
        assertEdges(SHOWN, SHOWN + 300_000 * COVERAGE);
        band.anchor(300_000);
        band.clip(SHOWN, 0, 400_000);
        assertEdges(SHOWN - 300_000 * COVERAGE, SHOWN);
    }

    /** 10 mA for 10 days are 2.4 Ah. */
    @Test
    void whatAFactLeavesGrowsWithTheCountingSince() {
        band.anchor(300_000);
        band.clip(SHOWN, 550_000, 650_000);
        band.add(10 * DAY_MILLIS, 0, 0, WARMTH);
        assertEdges(550_000 - 24_000 * COVERAGE, 650_000 + 24_000 * COVERAGE);
        // a minute at 100 A unmeasured, 1.667 Ah, on top
        band.addUnmeasured(60_000);
        assertEdges(550_000 - 24_000 * COVERAGE - 16_667, 650_000 + 24_000 * COVERAGE + 16_667);
    }

    @Test
    void anAnchorDropsTheFacts() {
        band.anchor(300_000);
        band.clip(SHOWN, 590_000, 610_000);
        band.anchor(200_000);
        assertEdges(SHOWN - 200_000 * COVERAGE, SHOWN + 200_000 * COVERAGE);
    }

    @Test
    void timeWithoutPowerDropsTheFactsAndWidensTheRest() {
        band.anchor(200_000);
        band.clip(SHOWN, 590_000, 610_000);
        band.addOffTime(3_600_000, 5_000_000);
        assertEdges(SHOWN - 200_000 * COVERAGE - 50_000, SHOWN + 200_000 * COVERAGE + 50_000);
    }

    @Test
    void forgettingDropsTheFacts() {
        band.anchor(300_000);
        band.clip(SHOWN, 590_000, 610_000);
        band.forget();
        assertEdges(0, WHOLE);
        band.sums().resume(300_000, 0, 0, 0, 0, 0, 0);
        assertEdges(SHOWN - 300_000 * COVERAGE, SHOWN + 300_000 * COVERAGE);
    }

    /** The distance of a fact is taken from a count that says nothing. */
    @Test
    void factsDoNotMakeAnUnknownCountKnown() {
        band.clip(SHOWN, 550_000, 650_000);
        assertEdges(0, WHOLE);
        assertTrue(band.isUnknown());
        assertEquals(WHOLE, band.halfWidthPartsPerMillion());
    }

    /**
     * B4: 10 % within 46 says nothing, though the truth cannot lie under empty; nor 90 within 46.
     */
    @Test
    void emptyAndFullAreNoFacts() {
        band.anchor(400_000);
        band.clip(100_000, 0, 200_000);
        band.update(100_000, ampHours(10));
        assertEquals(400_000 * COVERAGE, band.halfWidthPartsPerMillion(), ROUNDING);
        assertTrue(band.isUnknown());
        band.anchor(400_000);
        band.clip(900_000, 800_000, WHOLE);
        band.update(900_000, ampHours(90));
        assertEquals(400_000 * COVERAGE, band.halfWidthPartsPerMillion(), ROUNDING);
        assertTrue(band.isUnknown());
    }

    /** B4: a ppm under 40 % is a number, 40 % is none. */
    @Test
    void unknownBeginsAtFortyPercent() {
        band.anchor(0);
        band.update(SHOWN, CHARGE);
        band.sums().addGap(1, (399_999L - band.halfWidthPartsPerMillion()) * 360_000_000);
        band.update(SHOWN, CHARGE);
        assertEquals(399_999, band.halfWidthPartsPerMillion());
        assertFalse(band.isUnknown());
        band.sums().addGap(1, 360_000_000);
        band.update(SHOWN, CHARGE);
        assertTrue(band.isUnknown());
    }
}
