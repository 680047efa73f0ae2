package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Named corners of the current path, and whole code ranges where they can be walked. */
class CurrentSenseTest {
    private static final long[][] SHUNTS_MILLIAMPS_MICROVOLTS = {
        {50_000, 50_000}, {100_000, 50_000}, {100_000, 75_000}, {100_000, 60_000},
        {150_000, 60_000}, {200_000, 60_000}, {500_000, 50_000}, {500_000, 100_000}
    };

    /** Every code of 12 and 16 bit on the usual shunts, full scale just fitting and twice that. */
    @ParameterizedTest
    @ValueSource(ints = {12, 16})
    void everyCodeReadsWithinOneMicroamp(int bits) {
        for (long[] shunt : SHUNTS_MILLIAMPS_MICROVOLTS) {
            for (int times = 1; times <= 2; times++) {
                GaugeSettings settings =
                        ExactCurrent.settings(
                                bits, shunt[0], shunt[1], shunt[1] * times, 77 * times - 154);
                CurrentSense sense = new CurrentSense(settings);
                int lowest = -(1 << (bits - 1));
                for (int counts = lowest; counts < -lowest; counts++) {
                    ExactCurrent exact = new ExactCurrent(settings, counts);
                    int microamps = sense.microampsFromCounts(counts);
                    if (!exact.isWithin(microamps, 1_000)) {
                        throw new AssertionError(counts + " read " + microamps + " uA");
                    }
                    boolean rail = counts == lowest || counts == -lowest - 1;
                    assertEquals(rail, sense.isClipped(counts), "clipped at " + counts);
                }
            }
        }
    }

    /**
     * The corner at which a factor of 31 fraction bits passes one microamp: an offset that pushes
     * the input above 2^31 while the current stays just within 32 bits. Found by search.
     */
    @Test
    void theWorstCornerOfTheFactorStaysWithinOneMicroamp() {
        GaugeSettings settings = ExactCurrent.settings(24, 1_990_071, 265_367, 286_350, 54_518);
        int counts = -8_388_472;
        int microamps = new CurrentSense(settings).microampsFromCounts(counts);
        ExactCurrent exact = new ExactCurrent(settings, counts);
        assertTrue(exact.isWithin(microamps, 1_000), microamps + " uA");
        assertFalse(exact.isWithin(microamps + 2, 1_000), "the check itself can fail");
    }

    @Test
    void countsBeyondTheLargestCurrentClipAndSaySo() {
        // 2000 A / 10 mV on +-1 V: full scale would be 200,000 A.
        GaugeSettings settings = ExactCurrent.settings(16, 2_000_000, 10_000, 1_000_000, 0);
        CurrentSense sense = new CurrentSense(settings);
        int ratedCounts = 327;
        assertFalse(sense.isClipped(ratedCounts));
        assertEquals(1_995_849_609, sense.microampsFromCounts(ratedCounts));
        assertTrue(sense.isClipped(352));
        assertTrue(sense.isClipped(-352));
        assertTrue(sense.microampsFromCounts(352) > 2_147_000_000);
        assertEquals(sense.microampsFromCounts(352), sense.microampsFromCounts(32_767));
        assertEquals(-sense.microampsFromCounts(352), sense.microampsFromCounts(-32_768));
    }

    @Test
    void onlyCodesOfTheConverterArePlausible() {
        GaugeSettings settings =
                GaugeSettings.builder().set(Setting.SHUNT_CONVERTER_BITS, 12).build();
        CurrentSense sense = new CurrentSense(settings);
        assertFalse(sense.isImplausible(2_047));
        assertFalse(sense.isImplausible(-2_048));
        assertTrue(sense.isImplausible(2_048));
        assertTrue(sense.isImplausible(-2_049));
        assertTrue(sense.isClipped(2_047));
        assertFalse(sense.isClipped(2_046));
        assertTrue(sense.isClipped(-2_048));
        assertFalse(sense.isClipped(-2_047));
    }

    @ParameterizedTest
    @ValueSource(ints = {Integer.MIN_VALUE, Integer.MAX_VALUE, -2_049, 2_048})
    void anyPatternGivesAnAnswerOfTheRightSign(int counts) {
        GaugeSettings settings =
                GaugeSettings.builder().set(Setting.SHUNT_CONVERTER_BITS, 12).build();
        int microamps = new CurrentSense(settings).microampsFromCounts(counts);
        assertEquals(Integer.signum(counts), Integer.signum(microamps));
        assertTrue(Math.abs(microamps) <= 133_333_334, microamps + " uA");
    }

    /** G8: the rail is the converter's, wherever the offset puts its current. */
    @ParameterizedTest
    @ValueSource(ints = {-65_536, -1, 0, 1, 65_536})
    void bothRailsAreClippedWhateverTheOffset(int offsetCountsQ8) {
        GaugeSettings settings =
                GaugeSettings.builder()
                        .set(Setting.SHUNT_CONVERTER_BITS, 16)
                        .set(Setting.SHUNT_OFFSET, offsetCountsQ8)
                        .build();
        CurrentSense sense = new CurrentSense(settings);
        assertTrue(sense.isClipped(-32_768));
        assertTrue(sense.isClipped(32_767));
        assertFalse(sense.isClipped(-32_767));
        assertFalse(sense.isClipped(32_766));
    }
}
