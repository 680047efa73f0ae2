package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** The current on which the hours rest. */
interface HoursFilter {
    /** Takes a stretch of current; one of no length comes first. */
    void add(double microamps, long millis);

    /** The current to divide by. */
    double microamps();

    /** The filter of a set of mistakes. */
    static HoursFilter of(Set<Mistake> mistakes) {
        boolean fromZero = mistakes.contains(Mistake.FILTER_SEEDED_WITH_ZERO);
        if (mistakes.contains(Mistake.HOURS_SINGLE_POLE_3_MIN)) {
            return new PoleFilter(180_000, fromZero);
        }
        if (mistakes.contains(Mistake.HOURS_SINGLE_POLE_30_MIN)) {
            return new PoleFilter(1_800_000, fromZero);
        }
        if (mistakes.contains(Mistake.HOURS_WINDOW_30_MIN)) {
            return new WindowFilter(fromZero);
        }
        return new InstantFilter();
    }
}
