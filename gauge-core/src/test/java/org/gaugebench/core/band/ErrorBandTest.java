package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.COVERAGE;
import static org.gaugebench.core.band.BandRig.DAY_MILLIS;
import static org.gaugebench.core.band.BandRig.FULL_NANOCOULOMBS;
import static org.gaugebench.core.band.BandRig.HOUR_MILLIS;
import static org.gaugebench.core.band.BandRig.ROUNDING;
import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.gaugebench.core.band.BandRig.ampHours;
import static org.gaugebench.core.band.BandRig.exact;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Each term of the band alone, against its closed form in parts per million of 100 Ah. */
class ErrorBandTest {
    private static ErrorBand anchored(GaugeSettings.Builder settings) {
        ErrorBand band = new ErrorBand(settings.build(), 0);
        band.anchor(0);
        return band;
    }

    /** Never below the closed form; above it by the rounding and by 0.03 % of the factor. */
    private static void assertHalfWidth(double closedForm, int halfWidth) {
        assertTrue(halfWidth >= closedForm, halfWidth + " is narrower than " + closedForm);
        double most = closedForm * 1.000_3 + ROUNDING;
        assertTrue(halfWidth <= most, halfWidth + " is wider than " + most);
    }

    private static void assertBothSides(double term, ErrorBand band) {
        assertHalfWidth(COVERAGE * term, band.lowSidePartsPerMillion());
        assertHalfWidth(COVERAGE * term, band.highSidePartsPerMillion());
    }

    @Test
    void theAnchorsResidualStandsAlone() {
        ErrorBand band = anchored(exact());
        band.anchor(30_000);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(30_000, band);
    }

    /** 5 mA for 30 days are 3.6 Ah. */
    @Test
    void theOffsetGrowsWithTime() {
        ErrorBand band = anchored(exact().set(Setting.OFFSET_BOUND, 5_000));
        band.add(30 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(36_000, band);
    }

    /** Half of 25 mA for 10 days are 3 Ah: a step hides that much however good the zero is. */
    @Test
    void halfAConverterStepGrowsWithTimeBesideTheOffset() {
        ErrorBand band = new ErrorBand(exact().build(), 25_000);
        band.anchor(0);
        band.add(10 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(30_000, band);
        ErrorBand both = new ErrorBand(exact().set(Setting.OFFSET_BOUND, 12_500).build(), 25_000);
        both.anchor(0);
        both.add(10 * DAY_MILLIS, 0, 0, WARMTH);
        both.update(FULL_NANOCOULOMBS);
        assertBothSides(30_000 * Math.sqrt(2), both);
    }

    /** 1 % of 40 Ah out; the same charge back in leaves nothing. */
    @Test
    void theGainCancelsOnTheWayBack() {
        ErrorBand band = anchored(exact().set(Setting.GAIN_BOUND, 10_000));
        band.add(HOUR_MILLIS, 0, ampHours(40), WARMTH);
        band.update(ampHours(60));
        assertBothSides(4_000, band);
        band.add(HOUR_MILLIS, ampHours(40), 0, WARMTH);
        band.update(ampHours(100));
        assertBothSides(0, band);
    }

    /** 50 Ah in at 80 % move the count by 40 Ah, and so does the gain's error. */
    @Test
    void theGainActsOnWhatTheCountMoved() {
        ErrorBand band =
                anchored(
                        exact().set(Setting.GAIN_BOUND, 10_000)
                                .set(Setting.COULOMBIC_EFFICIENCY, 800_000));
        band.add(HOUR_MILLIS, ampHours(50), 0, WARMTH);
        band.update(ampHours(50));
        assertBothSides(4_000, band);
    }

    /** 0.1 % of 80 Ah moved. */
    @Test
    void theAsymmetryGrowsWithAllThatMoved() {
        ErrorBand band = anchored(exact().set(Setting.ASYMMETRY_BOUND, 1_000));
        band.add(HOUR_MILLIS, 0, ampHours(40), WARMTH);
        band.add(HOUR_MILLIS, ampHours(40), 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(800, band);
    }

    /** 3 % of 40 Ah in; what went out has no efficiency, and a minute counts by its net. */
    @Test
    void theEfficiencyGrowsWithWhatWentIn() {
        ErrorBand band = anchored(exact().set(Setting.EFFICIENCY_BOUND, 30_000));
        band.add(HOUR_MILLIS, 0, ampHours(40), WARMTH);
        band.update(ampHours(60));
        assertBothSides(0, band);
        band.add(HOUR_MILLIS, ampHours(42), ampHours(2), WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(12_000, band);
    }

    /** 4 % a month at 20 °C for 15 days, and at twice the warmth. */
    @Test
    void theSelfDischargeGrowsWithWarmTime() {
        ErrorBand band = anchored(exact().set(Setting.SELF_DISCHARGE_BOUND, 40_000));
        band.add(15 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(20_000, band);
        band.add(15 * DAY_MILLIS, 0, 0, 2 * WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(60_000, band);
    }

    /** 5 % of the 40 Ah below a full anchor, back to nothing at full. */
    @Test
    void theCapacityCountsFromAFullAnchorDown() {
        ErrorBand band = anchored(exact().set(Setting.CAPACITY_BOUND, 50_000));
        band.add(HOUR_MILLIS, 0, ampHours(40), WARMTH);
        band.update(ampHours(60));
        assertBothSides(20_000, band);
        band.add(HOUR_MILLIS, ampHours(40), 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(0, band);
    }

    /** At 90 % the count is 90 Ah away from an anchor at empty, not 10. */
    @Test
    void theCapacityCountsFromAnEmptyAnchorUp() {
        ErrorBand band = anchored(exact().set(Setting.CAPACITY_BOUND, 50_000));
        band.update(0);
        assertBothSides(0, band);
        band.add(HOUR_MILLIS, ampHours(90), 0, WARMTH);
        band.update(ampHours(90));
        assertBothSides(45_000, band);
    }

    /** 20 Ah of float charge were cut off at full; 20 Ah out are still 20 Ah from the anchor. */
    @Test
    void surplusThatWasCutOffDoesNotHideTheWayDown() {
        ErrorBand band = anchored(exact().set(Setting.CAPACITY_BOUND, 50_000));
        band.add(HOUR_MILLIS, ampHours(20), 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        band.add(HOUR_MILLIS, 0, ampHours(20), WARMTH);
        band.update(ampHours(80));
        assertBothSides(10_000, band);
    }

    /** 10 mA for 30 days, whole and on the lower side only. */
    @Test
    void currentPastTheShuntOnlyLowersTheTruth() {
        ErrorBand band = anchored(exact().set(Setting.UNMEASURED_BOUND, 10_000));
        band.add(30 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertHalfWidth(72_000, band.lowSidePartsPerMillion());
        // what is left above: 1 uA of offset bound, the smallest setting, for 30 days
        assertHalfWidth(COVERAGE * 7.2, band.highSidePartsPerMillion());
    }

    /** 100 A for a minute are 1.667 Ah, either way and added whole. */
    @Test
    void aGapAddsTheWorstCurrentToBothSides() {
        ErrorBand band = anchored(exact().set(Setting.SHUNT_RATED_CURRENT, 100_000));
        band.addUnmeasured(60_000);
        band.update(FULL_NANOCOULOMBS);
        assertHalfWidth(16_667, band.lowSidePartsPerMillion());
        assertHalfWidth(16_667, band.highSidePartsPerMillion());
    }

    /** 60 days at 10 mA are 14.4 Ah; 24.9 days, a 32-bit time, would be 5.97. */
    @Test
    void timeWithoutPowerIsNotCutOffAtThirtyTwoBits() {
        ErrorBand band = anchored(exact().set(Setting.SELF_DISCHARGE_BOUND, 40_000));
        band.addOffTime(60 * DAY_MILLIS, 10_000);
        band.update(FULL_NANOCOULOMBS);
        assertHalfWidth(144_000 + COVERAGE * 80_000, band.highSidePartsPerMillion());
        assertHalfWidth(144_000 + COVERAGE * 80_000, band.lowSidePartsPerMillion());
        assertEquals(0, band.millis());
    }

    /** 10,000 A, the most a setting allows, for 300 days overflow 64 bits. */
    @Test
    void theLargestGapSaturates() {
        ErrorBand band = anchored(exact());
        band.addGap(300 * DAY_MILLIS, 10_000_000_000L);
        band.update(FULL_NANOCOULOMBS);
        assertEquals(1_000_000, band.highSidePartsPerMillion());
        assertEquals(1L << 62, band.gapNanocoulombs());
        band.addGap(300 * DAY_MILLIS, 10_000_000_000L);
        assertEquals(1L << 62, band.gapNanocoulombs());
    }

    @Test
    void independentTermsAddInSquares() {
        ErrorBand band = anchored(exact().set(Setting.OFFSET_BOUND, 5_000));
        band.anchor(48_000);
        band.add(30 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertBothSides(60_000, band);
    }

    @Test
    void theBandIsNeverNarrowerThanTheFiguresResolution() {
        ErrorBand band = anchored(exact());
        band.update(FULL_NANOCOULOMBS);
        assertTrue(band.lowSidePartsPerMillion() >= 1);
        assertTrue(band.highSidePartsPerMillion() >= 1);
    }

    /** A millionth of a millionth of the capacity put in: the term is 1 ppm and not 0. */
    @Test
    void theSmallestTermRoundsUp() {
        ErrorBand band = anchored(exact().set(Setting.EFFICIENCY_BOUND, 1));
        band.add(0, 360_000_000, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertEquals(3, band.highSidePartsPerMillion());
    }

    /** 2^25 uA, half of a 67 A step, times 2^39 ms are 2^64 nC: cut to 64 bits that is nothing. */
    @Test
    void theLongestTimeTimesTheCoarsestStepSaturates() {
        ErrorBand band = new ErrorBand(exact().build(), 1 << 26);
        band.anchor(0);
        band.add(1L << 39, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertTrue(band.isUnknown());
    }

    @Test
    void anAnchorStartsEverySumAgain() {
        ErrorBand band = anchored(exact());
        band.add(DAY_MILLIS, ampHours(3), ampHours(2), WARMTH);
        band.addUnmeasured(1_000);
        band.anchor(7);
        assertEquals(7, band.residualPartsPerMillion());
        assertEquals(0, band.millis());
        assertEquals(0, band.netNanocoulombs());
        assertEquals(0, band.grossNanocoulombs());
        assertEquals(0, band.inNanocoulombs());
        assertEquals(0, band.gapNanocoulombs());
        assertEquals(0, band.warmMillisQ8());
    }

    @Test
    void everythingIsPossibleUntilAnAnchorAndAfterForgetting() {
        ErrorBand band = new ErrorBand(exact().build(), 0);
        band.update(ampHours(50));
        assertEquals(1_000_000, band.lowSidePartsPerMillion());
        assertEquals(1_000_000, band.highSidePartsPerMillion());
        assertTrue(band.isUnknown());
        band.anchor(0);
        band.update(ampHours(50));
        assertFalse(band.isUnknown());
        band.forget();
        band.update(ampHours(50));
        assertTrue(band.isUnknown());
    }

    /** The worst case enters whole, so it sets the side to a ppm. */
    @Test
    void unknownBeginsAtFortyPercent() {
        ErrorBand band = anchored(exact());
        band.update(FULL_NANOCOULOMBS);
        long none = band.highSidePartsPerMillion();
        band.addGap(1, (399_999 - none) * 360_000_000);
        band.update(FULL_NANOCOULOMBS);
        assertEquals(399_999, band.highSidePartsPerMillion());
        assertFalse(band.isUnknown());
        band.addGap(1, 360_000_000);
        band.update(FULL_NANOCOULOMBS);
        assertEquals(400_000, band.highSidePartsPerMillion());
        assertTrue(band.isUnknown());
    }

    @Test
    void oneSideIsEnoughForUnknown() {
        ErrorBand band = anchored(exact().set(Setting.UNMEASURED_BOUND, 1_000_000));
        band.add(41 * HOUR_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        assertTrue(band.highSidePartsPerMillion() < 1_000);
        assertTrue(band.isUnknown());
        // What the gap adds to both sides brings the lower one to 40 % exactly.
        band.anchor(0);
        band.add(39 * HOUR_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        band.addGap(1, (400_000L - band.lowSidePartsPerMillion()) * 360_000_000);
        band.update(FULL_NANOCOULOMBS);
        assertEquals(400_000, band.lowSidePartsPerMillion());
        assertTrue(band.isUnknown());
    }

    @Test
    void wideningAddsToTheResidualUpToTheWhole() {
        ErrorBand band = anchored(exact());
        band.anchor(10_000);
        band.widen(50_000);
        assertEquals(60_000, band.residualPartsPerMillion());
        band.widen(999_999);
        assertEquals(1_000_000, band.residualPartsPerMillion());
    }

    @Test
    void resumingGivesTheSameBandAndClampsWhatNoSumCanReach() {
        ErrorBand band = anchored(exact().set(Setting.GAIN_BOUND, 5_000));
        band.anchor(9_000);
        band.add(DAY_MILLIS, ampHours(3), ampHours(20), WARMTH);
        band.addUnmeasured(1_234);
        band.update(ampHours(83));
        ErrorBand other = anchored(exact().set(Setting.GAIN_BOUND, 5_000));
        other.resume(
                band.residualPartsPerMillion(),
                band.millis(),
                band.netNanocoulombs(),
                band.grossNanocoulombs(),
                band.inNanocoulombs(),
                band.gapNanocoulombs(),
                band.warmMillisQ8());
        other.update(ampHours(83));
        assertEquals(band.lowSidePartsPerMillion(), other.lowSidePartsPerMillion());
        assertEquals(band.highSidePartsPerMillion(), other.highSidePartsPerMillion());
        long most = Long.MAX_VALUE;
        other.resume(999_999, most, Long.MIN_VALUE, most, most, most, most);
        other.update(0);
        assertEquals(1_000_000, other.lowSidePartsPerMillion());
        assertEquals(1L << 39, other.millis());
        assertEquals(-(1L << 62), other.netNanocoulombs());
        assertEquals(1L << 62, other.gapNanocoulombs());
        other.resume(-1, -1, -1, -1, -1, -1, -1);
        assertEquals(0, other.residualPartsPerMillion());
        assertEquals(-1, other.netNanocoulombs());
        assertEquals(0, other.grossNanocoulombs());
    }

    /** 1 uA of offset and half a step of 3 uA, which is 1.5 and not 1, for a thousand days. */
    @Test
    void halfAnOddStepRoundsUp() {
        ErrorBand band = new ErrorBand(exact().build(), 3);
        band.anchor(0);
        band.add(1_000 * DAY_MILLIS, 0, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        double closedForm = COVERAGE * Math.hypot(240, 360);
        assertTrue(band.highSidePartsPerMillion() >= closedForm);
    }

    /** A day without power at 50 % a month; the smallest part of it is 1 ppm, not 0 and not 2. */
    @Test
    void theSelfDischargeOfAMomentRoundsUp() {
        for (long millis : new long[] {1, 5_184}) {
            ErrorBand band = anchored(exact().set(Setting.SELF_DISCHARGE_BOUND, 500_000));
            band.addOffTime(millis, 0);
            band.update(FULL_NANOCOULOMBS);
            // 1 ppm times 1.155, rounded up, and the resolution of 1 ppm
            assertEquals(3, band.highSidePartsPerMillion(), millis + " ms");
        }
    }
}
