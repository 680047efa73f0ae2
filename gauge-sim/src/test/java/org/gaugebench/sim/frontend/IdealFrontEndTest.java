package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;
import org.junit.jupiter.api.Test;

class IdealFrontEndTest {
    /** 128 mV over 2^15 codes, 1 mOhm: 256 counts an amp exactly. */
    private final IdealFrontEnd frontEnd =
            new IdealFrontEnd(
                    new ShuntRating(100_000_000, 100_000),
                    new ConverterRange(16, 128_000),
                    16,
                    65.536);

    @Test
    void roundsToTheNearestCodeWithHalvesUpward() {
        assertEquals(256, frontEnd.shuntCounts(1));
        assertEquals(1, frontEnd.shuntCounts(0.5 / 256));
        assertEquals(0, frontEnd.shuntCounts(-0.5 / 256));
        assertEquals(-1, frontEnd.shuntCounts(-0.51 / 256));
    }

    @Test
    void standsAtItsRailsAndCountsIt() {
        assertEquals(32_767, frontEnd.shuntCounts(127.999));
        assertEquals(32_767, frontEnd.shuntCounts(128));
        assertEquals(-32_768, frontEnd.shuntCounts(-128));
        assertEquals(-32_768, frontEnd.shuntCounts(-1e9));
        assertEquals(3, frontEnd.clippedSamples());
    }

    @Test
    void voltageHasNoSign() {
        assertEquals(12_600, frontEnd.voltageCounts(12.6));
        assertEquals(0, frontEnd.voltageCounts(-1));
        assertEquals(65_535, frontEnd.voltageCounts(100));
    }
}
