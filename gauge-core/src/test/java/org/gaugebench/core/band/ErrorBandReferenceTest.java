package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.COVERAGE;
import static org.gaugebench.core.band.BandRig.FULL_NANOCOULOMBS;
import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published sums of rectangular inputs, and the growth that the band was designed to. */
class ErrorBandReferenceTest {
    /**
     * Standard uncertainty 1 in the published examples is 1 % here; rectangular, so a = sqrt(3).
     */
    private static final double UNIT = 10_000;

    private static final int HALF_WIDTH = (int) Math.round(UNIT * Math.sqrt(3));

    /** Anchor, gain, asymmetry and efficiency, each with a sensitivity of 1 or, if 0, absent. */
    private static int halfWidth(long residual) {
        ErrorBand band =
                new ErrorBand(
                        BandRig.exact()
                                .set(Setting.GAIN_BOUND, HALF_WIDTH)
                                .set(Setting.ASYMMETRY_BOUND, HALF_WIDTH)
                                .set(Setting.EFFICIENCY_BOUND, HALF_WIDTH)
                                .build(),
                        0);
        band.anchor(residual);
        band.add(0, FULL_NANOCOULOMBS, 0, WARMTH);
        band.update(FULL_NANOCOULOMBS);
        return band.highSidePartsPerMillion();
    }

    /**
     * JCGM 101:2008, 9.2.3, table 3: four rectangular inputs of standard uncertainty 1 give u =
     * 2.00, and the exact interval of 95 % is +-3.88. Coverage factor 2 gives 4.00.
     */
    @Test
    void fourEqualRectanglesGiveThePublishedUncertainty() {
        int band = halfWidth(HALF_WIDTH);
        assertEquals(2 * 2.00 * UNIT, band, 2 * 2.00 * UNIT * 0.000_3 + BandRig.ROUNDING);
        assertTrue(band >= 3.88 * UNIT);
    }

    /**
     * The same, 9.2.4, table 4: three of 1 and one of 10 give u = 10.1, the interval of 95 % is
     * +-17.0 and that of the GUM with factor 1.96 is +-19.9. One large rectangle is where the
     * factor is too generous: by 1.19 here, which is what the band's width limit of 1.6 allows for.
     */
    @Test
    void oneLargeRectangleGivesThePublishedUncertaintyAndABandThatIsTooWide() {
        int band = halfWidth(Math.round(10 * UNIT * Math.sqrt(3)));
        double published = 2 * Math.sqrt(103) * UNIT;
        assertEquals(published, band, published * 0.000_3 + BandRig.ROUNDING);
        assertEquals(1.19, band / (17.0 * UNIT), 0.01);
    }

    /** One set of bounds of the growth table, in the order of the terms. */
    private enum Column {
        LITHIUM(5_000, 5_000, 1_000, 5_000, 10_000, 30_000, 10_000, 10_000),
        LEAD_ACID(5_000, 5_000, 1_000, 30_000, 40_000, 50_000, 40_000, 10_000),
        LITHIUM_NOT_ZEROED(100_000, 10_000, 5_000, 5_000, 10_000, 100_000, 10_000, 20_000);

        // Never handed out, so nobody can change it.
        @SuppressWarnings("ImmutableEnumChecker")
        private final int[] bounds;

        Column(int... bounds) {
            this.bounds = bounds;
        }

        /** The closed form in floating point, in % of the capacity: the symmetric part. */
        double symmetricPercent(int days) {
            double gross = 40 + 80.0 * days;
            double[] terms = {
                bounds[6] / 1e4,
                bounds[0] / 1e6 * 24 * days,
                bounds[1] / 1e6 * 40,
                bounds[2] / 1e6 * gross,
                bounds[3] / 1e6 * 40 * days,
                bounds[4] / 1e4 * days / 30,
                bounds[5] / 1e6 * 40
            };
            double squares = 0;
            for (double term : terms) {
                squares += Math.min(term, 100) * Math.min(term, 100);
            }
            return COVERAGE * Math.sqrt(squares);
        }

        double unmeasuredPercent(int days) {
            return bounds[7] / 1e6 * 24 * days;
        }

        ErrorBand band(int days) {
            ErrorBand band =
                    new ErrorBand(
                            BandRig.exact()
                                    .set(Setting.OFFSET_BOUND, bounds[0])
                                    .set(Setting.GAIN_BOUND, bounds[1])
                                    .set(Setting.ASYMMETRY_BOUND, bounds[2])
                                    .set(Setting.EFFICIENCY_BOUND, bounds[3])
                                    .set(Setting.SELF_DISCHARGE_BOUND, bounds[4])
                                    .set(Setting.CAPACITY_BOUND, bounds[5])
                                    .set(Setting.UNMEASURED_BOUND, bounds[7])
                                    .build(),
                            0);
            band.anchor(bounds[6]);
            BandRig.cycle(band, days);
            return band;
        }
    }

    /**
     * The growth that the band was designed to: % of 100 Ah after days of 40 Ah out and in, at 60
     * %, anchored at full (worked out in floating point by others, printed to the digits here; no
     * published source). They leave the first 40 Ah down to 60 % out of the throughput, which this
     * test feeds: at most 0.05 points through the asymmetry. Tolerance: that and half the last
     * printed digit.
     */
    @ParameterizedTest
    @CsvSource({
        "LITHIUM, 0, 1.8, 1.8, 0.05",
        "LITHIUM, 1, 1.8, 2.1, 0.05",
        "LITHIUM, 7, 2.7, 4.4, 0.05",
        "LITHIUM, 14, 4.4, 7.8, 0.05",
        "LITHIUM, 30, 8.8, 16.0, 0.05",
        "LITHIUM, 90, 26, 48, 0.5",
        "LEAD_ACID, 0, 5.2, 5.2, 0.05",
        "LEAD_ACID, 1, 5.4, 5.6, 0.05",
        "LEAD_ACID, 7, 11.1, 12.8, 0.05",
        "LEAD_ACID, 14, 20.3, 23.7, 0.05",
        "LEAD_ACID, 30, 42, 50, 0.5",
        "LITHIUM_NOT_ZEROED, 0, 4.8, 4.8, 0.05",
        "LITHIUM_NOT_ZEROED, 1, 5.6, 6.0, 0.05",
        "LITHIUM_NOT_ZEROED, 7, 20.3, 23.7, 0.05",
        "LITHIUM_NOT_ZEROED, 14, 39.8, 46.5, 0.05",
        "LITHIUM_NOT_ZEROED, 30, 85, 99, 0.5"
    })
    void theBandGrowsAsDesigned(
            Column column, int days, double high, double low, double lastDigit) {
        double symmetric = column.symmetricPercent(days);
        double lower = symmetric + column.unmeasuredPercent(days);
        assertEquals(high, symmetric, 0.05 + lastDigit);
        assertEquals(low, lower, 0.05 + lastDigit);
        ErrorBand band = column.band(days);
        double rounding = BandRig.ROUNDING / 1e4 + 0.000_3 * symmetric;
        assertEquals(symmetric, band.highSidePartsPerMillion() / 1e4, rounding);
        assertEquals(lower, band.lowSidePartsPerMillion() / 1e4, rounding);
        assertTrue(band.highSidePartsPerMillion() / 1e4 >= symmetric);
    }

    /** The same table says "unknown" at 90 days in the last two columns. */
    @ParameterizedTest
    @CsvSource({"LEAD_ACID, true", "LITHIUM_NOT_ZEROED, true"})
    void afterNinetyDaysTheseSayUnknown(Column column, boolean unknown) {
        assertEquals(unknown, column.band(90).isUnknown());
        assertEquals(!unknown, column.band(7).isUnknown());
    }
}
