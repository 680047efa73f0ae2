package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The voltage path against the exact rational, and outside its code range. */
class VoltageSenseProperties {
    @Property
    void everyCodeIsWithinOneMicrovolt(
            @ForAll @IntRange(min = 10, max = 24) int bits,
            @ForAll @IntRange(min = 5_000, max = 100_000) int fullScaleMillivolts,
            @ForAll int pattern) {
        VoltageSense sense = sense(bits, fullScaleMillivolts);
        int highest = (1 << bits) - 1;
        for (int counts : new int[] {Math.floorMod(pattern, highest + 1), 0, highest}) {
            // counts x fullScale_uV / 2^bits
            BigInteger error =
                    BigInteger.valueOf(sense.microvoltsFromCounts(counts))
                            .shiftLeft(bits)
                            .subtract(
                                    BigInteger.valueOf(counts)
                                            .multiply(
                                                    BigInteger.valueOf(
                                                            fullScaleMillivolts * 1_000L)))
                            .abs();
            assertTrue(error.compareTo(BigInteger.ONE.shiftLeft(bits)) <= 0, "at " + counts);
            assertEquals(counts == highest, sense.isClipped(counts));
            assertEquals(counts < highest, sense.isInRange(counts));
            if (sense.isInRange(counts)) {
                assertEquals(sense.microvoltsFromCounts(counts), sense.microvoltsInRange(counts));
            }
        }
    }

    @Property
    void whatIsNoCodeIsImplausibleAndStaysInRange(
            @ForAll @IntRange(min = 10, max = 24) int bits, @ForAll int counts) {
        VoltageSense sense = sense(bits, 65_536);
        int highest = (1 << bits) - 1;
        assertEquals(counts < 0 || counts > highest, sense.isImplausible(counts));
        assertEquals(counts >= 0 && counts < highest, sense.isInRange(counts));
        int microvolts = sense.microvoltsFromCounts(counts);
        assertTrue(microvolts >= 0 && microvolts < 65_536_000, microvolts + " uV");
    }

    private static VoltageSense sense(int bits, int fullScaleMillivolts) {
        return new VoltageSense(
                GaugeSettings.builder()
                        .set(Setting.VOLTAGE_CONVERTER_BITS, bits)
                        .set(Setting.VOLTAGE_FULL_SCALE, fullScaleMillivolts)
                        .set(Setting.ABSORPTION, 0)
                        .build());
    }
}
