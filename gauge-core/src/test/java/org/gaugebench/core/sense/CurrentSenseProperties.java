package org.gaugebench.core.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Every converter of 12 to 24 bit on every shunt and full scale that the settings allow. */
class CurrentSenseProperties {
    /**
     * 0.5 uA of the last rounding, and at most 2^31.00005 / 2^33 = 0.25001 uA of the multiplier's:
     * see docs/arithmetic.md. The promise to the outside is 1 uA.
     */
    private static final int BOUND_THOUSANDTHS = 751;

    @Property(tries = 5_000)
    void everyReadingWithinRangeIsWithinTheBound(
            @ForAll @IntRange(min = 12, max = 24) int bits,
            @ForAll @IntRange(min = 1_000, max = 2_000_000) int ratedMilliamps,
            @ForAll @IntRange(min = 10_000, max = 300_000) int dropMicrovolts,
            @ForAll @IntRange(min = 10_000, max = 1_000_000) int fullScaleMicrovolts,
            @ForAll @IntRange(min = -65_536, max = 65_536) int offsetQ8,
            @ForAll int pattern) {
        Assume.that(dropMicrovolts <= fullScaleMicrovolts);
        GaugeSettings settings =
                ExactCurrent.settings(
                        bits, ratedMilliamps, dropMicrovolts, fullScaleMicrovolts, offsetQ8);
        CurrentSense sense = new CurrentSense(settings);
        int highest = (1 << (bits - 1)) - 1;
        // The random code, both rails, zero, and codes about the end of 32 bits of microamps.
        double microampsPerCount =
                (double) fullScaleMicrovolts
                        * ratedMilliamps
                        * 1_000
                        / dropMicrovolts
                        / (highest + 1);
        long atEnd = Math.round(CurrentSense.LARGEST_MICROAMPS / microampsPerCount);
        int nearEnd = (int) Math.min(highest, atEnd);
        int random = Math.floorMod(pattern, 2 * highest + 2) - highest - 1;
        int[] codes = {
            random,
            0,
            highest,
            -highest - 1,
            highest - 1,
            -highest,
            nearEnd,
            -nearEnd,
            Math.max(nearEnd - 1, 0),
            Math.min(1 - nearEnd, 0)
        };
        for (int counts : codes) {
            check(settings, sense, counts, highest);
        }
    }

    private static void check(GaugeSettings settings, CurrentSense sense, int counts, int highest) {
        ExactCurrent exact = new ExactCurrent(settings, counts);
        int microamps = sense.microampsFromCounts(counts);
        assertFalse(sense.isImplausible(counts));
        if (exact.isBeyondRange()) {
            assertTrue(sense.isClipped(counts), counts + " is beyond range and not clipped");
            assertEquals(exact.numerator.signum(), Integer.signum(microamps));
        } else {
            assertTrue(exact.isWithin(microamps, BOUND_THOUSANDTHS), counts + " " + microamps);
        }
        if (counts >= highest || counts <= -highest - 1) {
            assertTrue(sense.isClipped(counts), "rail not clipped");
        }
        assertEquals(isBelowTheLimits(settings, counts, highest), sense.isInRange(counts));
        if (sense.isInRange(counts)) {
            assertEquals(microamps, sense.microampsInRange(counts), "at " + counts);
        }
    }

    /** As docs/arithmetic.md says it: between the rails, and |x| below L of stage 2. */
    private static boolean isBelowTheLimits(GaugeSettings settings, int counts, int highest) {
        long offsetQ8 = settings.get(Setting.SHUNT_OFFSET);
        BigInteger numerator =
                BigInteger.valueOf(settings.get(Setting.SHUNT_FULL_SCALE))
                        .multiply(BigInteger.valueOf(settings.get(Setting.SHUNT_RATED_CURRENT)))
                        .multiply(BigInteger.valueOf(1_000));
        long fitting =
                BigInteger.valueOf(settings.get(Setting.SHUNT_RATED_DROP))
                        .multiply(BigInteger.valueOf((highest + 1L) << 8))
                        .multiply(BigInteger.valueOf(CurrentSense.LARGEST_MICROAMPS))
                        .divide(numerator)
                        .min(BigInteger.valueOf(Long.MAX_VALUE))
                        .longValue();
        long limitQ8 = Math.min(((highest + 1L) << 8) + Math.abs(offsetQ8), fitting);
        return counts > -highest - 1
                && counts < highest
                && Math.abs(((long) counts << 8) - offsetQ8) < limitQ8;
    }

    /** A clipped reading below the rails is beyond range, to the width of one step of 1/256. */
    @Property
    void nothingWithinRangeIsClippedBetweenTheRails(
            @ForAll @IntRange(min = 12, max = 24) int bits,
            @ForAll @IntRange(min = 1_000, max = 2_000_000) int ratedMilliamps,
            @ForAll @IntRange(min = 10_000, max = 300_000) int dropMicrovolts,
            @ForAll int pattern) {
        GaugeSettings settings =
                ExactCurrent.settings(bits, ratedMilliamps, dropMicrovolts, 1_000_000, 0);
        CurrentSense sense = new CurrentSense(settings);
        int highest = (1 << (bits - 1)) - 1;
        int counts = Math.floorMod(pattern, 2 * highest - 1) - highest + 1;
        if (sense.isClipped(counts)) {
            int further = counts + Integer.signum(counts);
            assertTrue(new ExactCurrent(settings, further).isBeyondRange(), "clipped " + counts);
        }
    }

    /** The rated current can be read in both directions wherever the settings are accepted. */
    @Property
    void theRatedCurrentIsReadable(
            @ForAll @IntRange(min = 12, max = 24) int bits,
            @ForAll @IntRange(min = 1_000, max = 2_000_000) int ratedMilliamps,
            @ForAll @IntRange(min = 10_000, max = 300_000) int dropMicrovolts,
            @ForAll @IntRange(min = 10_000, max = 1_000_000) int fullScaleMicrovolts) {
        GaugeSettings.Builder builder =
                GaugeSettings.builder()
                        .set(Setting.SHUNT_CONVERTER_BITS, bits)
                        .set(Setting.SHUNT_RATED_CURRENT, ratedMilliamps)
                        .set(Setting.SHUNT_RATED_DROP, dropMicrovolts)
                        .set(Setting.SHUNT_FULL_SCALE, fullScaleMicrovolts);
        if (dropMicrovolts > fullScaleMicrovolts) {
            assertFalse(builder.problems().isEmpty());
            return;
        }
        CurrentSense sense = new CurrentSense(builder.build());
        // The last whole count at or under the rated drop; at a rail when drop = full scale.
        long counts = ((long) dropMicrovolts << (bits - 1)) / fullScaleMicrovolts;
        int highest = (1 << (bits - 1)) - 1;
        int readable = (int) Math.min(counts, highest);
        boolean expectClipped = readable == highest;
        assertEquals(expectClipped, sense.isClipped(readable));
        assertTrue(sense.microampsFromCounts(readable) <= ratedMilliamps * 1_000);
        assertTrue(sense.microampsFromCounts(readable) > 0);
    }

    @Property
    void isSymmetricWithoutAnOffset(
            @ForAll @IntRange(min = 12, max = 24) int bits,
            @ForAll @IntRange(min = 1_000, max = 2_000_000) int ratedMilliamps,
            @ForAll @IntRange(min = 10_000, max = 300_000) int dropMicrovolts,
            @ForAll int pattern) {
        CurrentSense sense =
                new CurrentSense(
                        ExactCurrent.settings(bits, ratedMilliamps, dropMicrovolts, 300_000, 0));
        int counts = pattern >> (32 - bits);
        assertEquals(-sense.microampsFromCounts(counts), sense.microampsFromCounts(-counts));
    }
}
