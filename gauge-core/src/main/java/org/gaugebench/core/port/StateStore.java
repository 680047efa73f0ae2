package org.gaugebench.core.port;

/**
 * Memory that keeps its bytes without power, in slots that are erased and programmed whole. All
 * calls answer with a code, never with an exception.
 */
public interface StateStore {
    /** Answer of a call that succeeded. */
    int OK = 0;

    /** Answer of a call that the memory reports as failed. */
    int FAILED = -1;

    /** A store without slots: nothing is ever kept. */
    StateStore NONE =
            new StateStore() {
                @Override
                public int slots() {
                    return 0;
                }

                @Override
                public int slotBytes() {
                    return 0;
                }

                @Override
                public int read(int slot, byte[] destination) {
                    return FAILED;
                }

                @Override
                public int erase(int slot) {
                    return FAILED;
                }

                @Override
                public int program(int slot, byte[] source) {
                    return FAILED;
                }
            };

    /**
     * Number of slots.
     *
     * @return 0 for a store that keeps nothing, else at least 2
     */
    int slots();

    /**
     * Size of each slot.
     *
     * @return bytes a slot
     */
    int slotBytes();

    /**
     * Reads a slot.
     *
     * @param slot 0 to slots - 1
     * @param destination receives up to its length, from the slot's first byte
     * @return {@link #OK} or {@link #FAILED}
     */
    int read(int slot, byte[] destination);

    /**
     * Erases a slot: every byte becomes 0xFF.
     *
     * @param slot 0 to slots - 1
     * @return {@link #OK} or {@link #FAILED}
     */
    int erase(int slot);

    /**
     * Programs an erased slot from its first byte.
     *
     * @param slot 0 to slots - 1
     * @param source the bytes to write
     * @return {@link #OK} or {@link #FAILED}
     */
    int program(int slot, byte[] source);
}
