package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

class LoadFilterProperties {
    /** The answer is a mean of what came in: it never leaves the range of the input. */
    @Property(tries = 300)
    void theAnswerStaysWithinTheCurrentsSeen(
            @ForAll @Size(min = 1, max = 200) List<Integer> currents,
            @ForAll @LongRange(min = 0, max = 1L << 56) long capacity,
            @ForAll @IntRange(min = 1, max = 240) int averaging) {
        LoadFilter filter = new LoadFilter(capacity, averaging);
        int lowest = Integer.MAX_VALUE;
        int highest = Integer.MIN_VALUE;
        for (int raw : currents) {
            int current = Math.max(raw, -Integer.MAX_VALUE);
            lowest = Math.min(lowest, current);
            highest = Math.max(highest, current);
            filter.addMinute(current);
            // The fast pole rounds down by at most one.
            assertTrue(filter.microamps() >= lowest - 1L && filter.microamps() <= highest);
            assertTrue(Math.abs(filter.microamps() * 256L - filter.microampsQ8()) < 256);
            assertTrue(filter.usualMicroamps() >= 0);
        }
    }

    /** One load for as long as the mean and the memory last: nothing but that load is left. */
    @Property(tries = 200)
    void aConstantLoadIsReachedWhateverWasBefore(
            @ForAll @Size(max = 100)
                    List<@IntRange(min = -900_000_000, max = 900_000_000) Integer> before,
            @ForAll @IntRange(min = -900_000_000, max = 900_000_000) int load) {
        LoadFilter filter = new LoadFilter(360_000_000_000_000L, 30);
        before.forEach(filter::addMinute);
        for (int i = 0; i < 100; i++) {
            filter.addMinute(load);
        }
        assertEquals(load, filter.microamps());
        assertTrue(Math.abs(load - filter.fastMicroamps()) <= 1);
    }

    @Property(tries = 200)
    void equalInputsGiveEqualState(
            @ForAll @Size(max = 300)
                    List<@IntRange(min = -90_000_000, max = 90_000_000) Integer> stretches) {
        assertEquals(digest(stretches), digest(stretches));
    }

    private static long digest(List<Integer> stretches) {
        LoadFilter filter = new LoadFilter(360_000_000_000_000L, 30);
        long digest = 1;
        for (int current : stretches) {
            filter.addStretch(current, 20_000);
            filter.addStretch(-current, 20_000);
            filter.addStretch(current, 20_000);
            filter.closeMinute(current / 3);
            for (long part :
                    new long[] {
                        filter.microampsQ8(),
                        filter.fastMicroamps(),
                        filter.oneMinuteMicroamps(),
                        filter.usualMicroamps(),
                        filter.envelopeLowMicroamps(),
                        filter.envelopeHighMicroamps(),
                        filter.outsideSlots(),
                        filter.rememberedSlotsLeft(),
                        filter.minutesInMean()
                    }) {
                digest = digest * 31 + part;
            }
        }
        return digest;
    }
}
