package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** The ends that are kept up to date are those of a look at all levels, whatever came before. */
class LoadEnvelopeProperties {
    private static final int MINUTES = 60;
    private static final int START_FROM = 97;
    private static final int WHOLE_HOUR = 98;

    @Property
    void theEndsAreThoseOfAllLevelsLookedAt(
            @ForAll @Size(400) List<@IntRange(min = 0, max = 99) Integer> steps,
            @ForAll @IntRange(min = 1, max = 40) int levels) {
        LoadEnvelope envelope = new LoadEnvelope(0);
        List<Integer> seen = new ArrayList<>();
        int lookBack = MINUTES;
        for (int step : steps) {
            // Few levels come back often: an end that leaves may still be there in another minute.
            int level = (step % levels - levels / 2) * 1_000;
            if (step == WHOLE_HOUR && !seen.isEmpty()) {
                lookBack = MINUTES;
                envelope.lookAtTheWholeHour();
            } else if (step == START_FROM) {
                lookBack = 1;
                seen.add(level);
                envelope.startFrom(level);
            } else {
                lookBack = Math.min(lookBack + 1, MINUTES);
                seen.add(level);
                envelope.add(level);
            }
            if (!seen.isEmpty()) {
                int from = Math.max(0, seen.size() - lookBack);
                List<Integer> looked = seen.subList(from, seen.size());
                long lowest = looked.stream().min(Integer::compare).orElseThrow();
                long highest = looked.stream().max(Integer::compare).orElseThrow();
                assertEquals(lowest - (Math.abs(lowest) >> 2), envelope.lowMicroamps());
                assertEquals(highest + (Math.abs(highest) >> 2), envelope.highMicroamps());
            }
        }
    }
}
