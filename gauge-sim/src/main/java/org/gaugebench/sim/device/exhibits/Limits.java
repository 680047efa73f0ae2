package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** Where the count ends, and where the figure that is shown ends. */
final class Limits {
    private final boolean countEnds;
    private final boolean figureEnds;

    Limits(Set<Mistake> mistakes) {
        figureEnds = !mistakes.contains(Mistake.NO_CLAMP);
        countEnds = figureEnds && !mistakes.contains(Mistake.DISPLAY_ONLY_CLAMP);
    }

    /** Stops the count itself at empty and at the capacity. */
    void apply(Accumulator accumulator, long capacityCountMillis) {
        if (!countEnds) {
            return;
        }
        long count = accumulator.countMillis();
        if (count < 0) {
            accumulator.set(0);
        } else if (count > capacityCountMillis) {
            accumulator.set(capacityCountMillis);
        }
    }

    /** The count that is shown. */
    long shown(long countMillis, long capacityCountMillis) {
        return figureEnds ? Math.max(0, Math.min(countMillis, capacityCountMillis)) : countMillis;
    }
}
