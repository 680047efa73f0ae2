package org.gaugebench.sim.device.exhibits;

import java.nio.ByteBuffer;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.random.SplitMix64;

/**
 * The count in one slot of a memory, which is erased before it is written: from the erase to the
 * end of the write there is no record at all.
 */
final class OneSlot {
    /** No record, or one whose check word is wrong. */
    static final long NOTHING = Long.MIN_VALUE;

    private static final int SLOT = 0;
    private static final int RECORD_BYTES = 2 * Long.BYTES;

    /** An erased slot must not pass for a record. */
    private static final long MARK = 0x6F6E65536C6F7421L;

    private final StateStore store;
    private final byte[] bytes = new byte[RECORD_BYTES];

    OneSlot(StateStore store) {
        this.store = store;
    }

    /** The count that was written last, or {@link #NOTHING}. */
    long read() {
        if (store.read(SLOT, bytes) != StateStore.OK) {
            return NOTHING;
        }
        ByteBuffer record = ByteBuffer.wrap(bytes);
        long countMillis = record.getLong();
        return record.getLong() == check(countMillis) ? countMillis : NOTHING;
    }

    void write(long countMillis) {
        ByteBuffer.wrap(bytes).putLong(countMillis).putLong(check(countMillis));
        if (store.erase(SLOT) == StateStore.OK) {
            store.program(SLOT, bytes);
        }
    }

    private static long check(long countMillis) {
        return SplitMix64.mix(countMillis ^ MARK);
    }
}
