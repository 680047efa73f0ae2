package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.sim.memory.MemoryFault;

/**
 * The memory that a gauge saves into, and what is wrong with it.
 *
 * @param slots number of slots, at least 2
 * @param slotBytes size of each
 * @param enduranceErases how often each slot can be erased before one of its bits fails; 0 for
 *     without end
 * @param faults in file order
 */
public record MemorySpec(int slots, int slotBytes, int enduranceErases, List<MemoryFault> faults) {
    /** Keeps the faults as given. */
    public MemorySpec {
        faults = List.copyOf(faults);
    }
}
