package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Shunts by their rating: resistance is rated drop over rated current. The pair 100 A / 50 mV = 0.5
 * mOhm is published in a shunt maker's note (Microhm, article 1130); the other rows follow from the
 * definition of the rating (DIN 43703 rates shunts in this way).
 */
class CurrentSenseReferenceTest {
    private static final int BITS = 16;

    /** A full scale of 2^15 x 10 uV: one count is 10 uV, so every voltage below is a count. */
    private static final int FULL_SCALE_MICROVOLTS = 327_680;

    private static final int MICROVOLTS_PER_COUNT = 10;

    @ParameterizedTest
    @CsvSource({
        "50, 50, 1000",
        "100, 50, 500",
        "100, 75, 750",
        "100, 60, 600",
        "150, 60, 400",
        "200, 60, 300",
        "500, 50, 100",
        "500, 100, 200"
    })
    void theVoltageOfOneAmpereReadsOneAmpere(int ratedAmps, int dropMillivolts, int microohms) {
        CurrentSense sense = sense(ratedAmps, dropMillivolts, 0);
        int counts = microohms / MICROVOLTS_PER_COUNT;
        assertEquals(1_000_000, sense.microampsFromCounts(counts));
        assertEquals(-1_000_000, sense.microampsFromCounts(-counts));
    }

    @ParameterizedTest
    @CsvSource({
        "50, 50",
        "100, 50",
        "100, 75",
        "100, 60",
        "150, 60",
        "200, 60",
        "500, 50",
        "500, 100"
    })
    void theRatedDropReadsTheRatedCurrent(int ratedAmps, int dropMillivolts) {
        CurrentSense sense = sense(ratedAmps, dropMillivolts, 0);
        int counts = dropMillivolts * 1_000 / MICROVOLTS_PER_COUNT;
        assertEquals(ratedAmps * 1_000_000, sense.microampsFromCounts(counts));
        assertEquals(-ratedAmps * 1_000_000, sense.microampsFromCounts(-counts));
        assertFalse(sense.isClipped(counts));
        assertFalse(sense.isClipped(-counts));
        assertTrue(sense.isClipped(-32_768));
    }

    /** 500 uV on 100 A / 50 mV with an offset of 3.5 counts taken off. */
    @ParameterizedTest
    @CsvSource({"896, 50, 930_000", "-896, 50, 1_070_000", "256, 50, 980_000"})
    void theOffsetIsTakenOffInPartsOfACount(int offsetQ8, int counts, String microamps) {
        int expected = Integer.parseInt(microamps.replace("_", ""));
        assertEquals(expected, sense(100, 50, offsetQ8).microampsFromCounts(counts));
    }

    private static CurrentSense sense(int ratedAmps, int dropMillivolts, int offsetQ8) {
        GaugeSettings settings =
                ExactCurrent.settings(
                        BITS,
                        ratedAmps * 1_000L,
                        dropMillivolts * 1_000L,
                        FULL_SCALE_MICROVOLTS,
                        offsetQ8);
        return new CurrentSense(settings);
    }
}
