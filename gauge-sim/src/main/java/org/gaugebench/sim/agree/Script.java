package org.gaugebench.sim.agree;

import java.util.List;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.memory.MemoryFault;
import org.gaugebench.sim.memory.SimulatedStore;

/**
 * Everything that happens to a gauge, from its first power on.
 *
 * @param settings that it begins with
 * @param slots of its memory
 * @param slotBytes of each
 * @param memorySeed of what a cut or a worn cell leaves at random
 * @param faults of its memory, none of which depends on the time
 * @param steps the first one is a {@link Step.Power}
 */
public record Script(
        GaugeSettings settings,
        int slots,
        int slotBytes,
        long memorySeed,
        List<MemoryFault> faults,
        List<Step> steps) {

    /** Keeps its own lists. */
    public Script {
        faults = List.copyOf(faults);
        steps = List.copyOf(steps);
    }

    /** The same with other steps. */
    Script with(List<Step> others) {
        return new Script(settings, slots, slotBytes, memorySeed, faults, others);
    }

    /** The same with other settings at the start. */
    Script with(GaugeSettings others) {
        return new Script(others, slots, slotBytes, memorySeed, faults, steps);
    }

    /** The same on a sound memory. */
    Script withSoundMemory() {
        return new Script(settings, slots, slotBytes, memorySeed, List.of(), steps);
    }

    /** Its memory as it leaves the factory. */
    SimulatedStore memory() {
        return new SimulatedStore(slots, slotBytes, memorySeed, faults);
    }

    /** How many ticks it has. */
    public long ticks() {
        return steps.stream().filter(Step.Tick.class::isInstance).count();
    }
}
