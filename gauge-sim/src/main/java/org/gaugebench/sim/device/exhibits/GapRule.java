package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** Which reading is counted for an interval. */
interface GapRule {
    /** An interval this long is a gap, unless the samples come as slowly anyway. */
    int GAP_MILLIS = 2_000;

    /**
     * The counts that stand for the interval.
     *
     * @param counts the reading that ends it
     * @param lastCounts the reading that began it
     * @param elapsedMillis its length
     */
    int counts(int counts, int lastCounts, long elapsedMillis);

    /** The rule of a set of mistakes. */
    static GapRule of(Set<Mistake> mistakes, int nominalTickMillis) {
        long longestMillis = Math.max(GAP_MILLIS, 2L * nominalTickMillis);
        if (mistakes.contains(Mistake.HOLD_LAST_ON_GAP)) {
            return (counts, last, elapsed) -> elapsed > longestMillis ? last : counts;
        }
        if (mistakes.contains(Mistake.GAP_NOT_COUNTED)) {
            return (counts, last, elapsed) -> elapsed > longestMillis ? 0 : counts;
        }
        return (counts, last, elapsed) -> counts;
    }
}
