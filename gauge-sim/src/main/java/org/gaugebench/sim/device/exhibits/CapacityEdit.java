package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** What the count is after another capacity was entered. */
interface CapacityEdit {
    /**
     * The new count.
     *
     * @param count before the edit
     * @param oldCapacity in the unit of the count, above 0
     * @param newCapacity in the unit of the count, above 0
     */
    long countMillis(long count, long oldCapacity, long newCapacity);

    /** The manner of a set of mistakes; without one the part that is left stays. */
    static CapacityEdit of(Set<Mistake> mistakes) {
        if (mistakes.contains(Mistake.EDIT_KEEPS_CHARGE_USED)) {
            return (count, oldCapacity, newCapacity) -> newCapacity - (oldCapacity - count);
        }
        if (mistakes.contains(Mistake.EDIT_KEEPS_CHARGE_LEFT)) {
            return (count, oldCapacity, newCapacity) -> count;
        }
        return CapacityEdit::samePart;
    }

    /** The same part of the new capacity. */
    static long samePart(long count, long oldCapacity, long newCapacity) {
        return StrictMath.round((double) count * newCapacity / oldCapacity);
    }
}
