package org.gaugebench.core.saved;

import java.util.Random;

/** States for tests: every field filled, and comparison of all fields. */
final class States {
    static final SettingsMark SETTINGS = new SettingsMark(0x600DF00D, 1, 12_000);

    private States() {}

    /** A state in which every field depends on the seed, within the field's size. */
    static SavedState filled(long seed) {
        Random random = new Random(seed);
        SavedState state = new SavedState();
        for (SavedField field : SavedField.values()) {
            long value = random.nextLong();
            int spare = 64 - 8 * field.sizeBytes();
            field.set(state, value << spare >> spare);
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
