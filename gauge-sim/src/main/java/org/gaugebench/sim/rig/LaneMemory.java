package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.memory.CutPlan;
import org.gaugebench.sim.memory.MemoryFault;
import org.gaugebench.sim.memory.SimulatedStore;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.MemorySpec;

/**
 * The memory of one lane: a {@link SimulatedStore} that asks for the time whenever it is used, so
 * that faults begin and end by the truth's clock and a tick costs nothing.
 */
final class LaneMemory implements StateStore {
    private final SimulatedStore store;
    private final LongSupplier timeMillis;

    /**
     * A memory from the factory.
     *
     * @param spec size and faults
     * @param seeds of the run; the stream is "memory/LANE"
     * @param lane name of the gauge
     * @param timeMillis the time of the tick that uses it
     */
    LaneMemory(MemorySpec spec, SeedTree seeds, String lane, LongSupplier timeMillis) {
        this.timeMillis = timeMillis;
        List<MemoryFault> faults = new ArrayList<>(spec.faults());
        if (spec.enduranceErases() > 0) {
            for (int slot = 0; slot < spec.slots(); slot++) {
                faults.add(MemoryFault.wearOut(slot, spec.enduranceErases()));
            }
        }
        store =
                new SimulatedStore(
                        spec.slots(), spec.slotBytes(), seeds.seedOf("memory/" + lane), faults);
    }

    void powerUp() {
        store.powerUp();
    }

    void cutAtWrite(long writesFromNow, CutPlan.Manner manner) {
        store.cutAtWrite((int) writesFromNow, manner);
    }

    /** Whether power is to go at a use to come: then each tick has to be worked through at once. */
    boolean isCutDue() {
        return store.isCutDue();
    }

    @Override
    public int slots() {
        return store.slots();
    }

    @Override
    public int slotBytes() {
        return store.slotBytes();
    }

    @Override
    public int read(int slot, byte[] destination) {
        store.setTimeMillis(timeMillis.getAsLong());
        return store.read(slot, destination);
    }

    @Override
    public int erase(int slot) {
        store.setTimeMillis(timeMillis.getAsLong());
        return store.erase(slot);
    }

    @Override
    public int program(int slot, byte[] source) {
        store.setTimeMillis(timeMillis.getAsLong());
        return store.program(slot, source);
    }
}
