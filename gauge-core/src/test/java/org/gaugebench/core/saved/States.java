package org.gaugebench.core.saved;

import java.util.Random;

/** States for tests: every field filled, and comparison of all fields. */
public final class States {
    static final SettingsMark SETTINGS = new SettingsMark(0x600DF00D, 1, 12_000);

    private States() {}

    /**
     * A state in which every field depends on the seed, each figure one a core can have written.
     */
    public static SavedState filled(long seed) {
        Random random = new Random(seed);
        SavedState state = new SavedState();
        for (SavedField field : SavedField.values()) {
            field.set(state, between(random.nextLong(), field.lowest(), field.highest()));
        }
        state.chargeNanocoulombs = between(random.nextLong(), 0, state.capacityNanocoulombs);
        return state;
    }

    private static long between(long bits, long low, long high) {
        return low + Long.remainderUnsigned(bits, high - low + 1);
    }

    /** The same with any bits in every field: what only the codec has to carry. */
    static SavedState anything(long seed) {
        Random random = new Random(seed);
        SavedState state = new SavedState();
        for (SavedField field : SavedField.values()) {
            int spare = 64 - 8 * field.sizeBytes();
            field.set(state, random.nextLong() << spare >> spare);
        }
        return state;
    }

    /** Whether all fields agree but the count of saves, which the ring keeps itself. */
    static boolean equal(SavedState a, SavedState b) {
        for (SavedField field : SavedField.values()) {
            if (field != SavedField.SAVES_COUNT && field.get(a) != field.get(b)) {
                return false;
            }
        }
        return true;
    }
}
