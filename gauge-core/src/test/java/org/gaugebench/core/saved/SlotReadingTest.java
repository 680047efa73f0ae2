package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.StateStore;
import org.junit.jupiter.api.Test;

/** How often a slot is read after power-up, and what a reading that fails leads to. */
class SlotReadingTest {
    private final SavedState read = new SavedState();

    private static SlotRing ring(StateStore store) {
        return new SlotRing(store, States.SETTINGS);
    }

    /** A memory of one slot's readings: counts them, and fails from one of them on. */
    private static final class WeakReader implements StateStore {
        private final StrictStore store;
        private final int weakSlot;
        private final int failsFrom;
        private final int[] reads;

        WeakReader(StrictStore store, int weakSlot, int failsFrom) {
            this.store = store;
            this.weakSlot = weakSlot;
            this.failsFrom = failsFrom;
            reads = new int[store.slots()];
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
            reads[slot]++;
            return slot == weakSlot && reads[slot] >= failsFrom
                    ? FAILED
                    : store.read(slot, destination);
        }

        @Override
        public int erase(int slot) {
            return store.erase(slot);
        }

        @Override
        public int program(int slot, byte[] source) {
            return store.program(slot, source);
        }
    }

    /** The newest checks when the slots are looked through, and not when it is to be taken over. */
    @Test
    void aRecordThatNoLongerChecksGivesWayToTheOneBeforeIt() {
        StrictStore store = new StrictStore(3, 256);
        SlotRing writer = ring(store);
        for (int seed = 1; seed <= 5; seed++) {
            writer.save(States.filled(seed));
        }
        WeakReader weak = new WeakReader(store, writer.newestSlot(), 2);
        assertEquals(SlotOutcome.OLDER_ONE_USED, ring(weak).open(read));
        assertTrue(States.equal(States.filled(4), read), "the record before it");
    }

    /** Low volts may spoil one reading; a third would only keep a dead slot busy. */
    @Test
    void aSlotThatDoesNotCheckIsReadTwice() {
        StrictStore store = new StrictStore(2, 256);
        store.cells[0][0] = 0x11;
        WeakReader counting = new WeakReader(store, 0, Integer.MAX_VALUE);
        ring(counting).open(read);
        assertArrayEquals(new int[] {2, 1}, counting.reads);
    }
}
