package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** M7: a record with a right check word and a figure that no core writes is broken. */
class PlausibleRecordTest {
    private static final int SLOT_BYTES = 256;

    private final SavedState read = new SavedState();
    private final StrictStore store = new StrictStore(3, SLOT_BYTES);

    private SlotRing ring() {
        return new SlotRing(store, States.SETTINGS);
    }

    private void put(int slot, SavedState state, int sequence) {
        byte[] record = new SavedStateCodec().encode(state, sequence, States.SETTINGS);
        System.arraycopy(record, 0, store.cells[slot], 0, record.length);
    }

    /** A state that differs from another one in a field alone; the count stays in its capacity. */
    private static SavedState with(SavedField field, long value) {
        SavedState state = States.filled(7);
        state.chargeNanocoulombs = 0;
        field.set(state, value);
        if (field == SavedField.CHARGE_NANOCOULOMBS && value > 0) {
            state.capacityNanocoulombs = SavedField.CAPACITY_NANOCOULOMBS.highest();
        }
        return state;
    }

    /** Figures just outside, and at the ends of the width, where the width has any. */
    private static List<Long> outside(SavedField field) {
        int spare = 64 - 8 * field.sizeBytes();
        long least = Long.MIN_VALUE >> spare;
        long most = Long.MAX_VALUE >> spare;
        List<Long> values = new ArrayList<>();
        if (field.lowest() > least) {
            values.add(field.lowest() - 1);
            values.add(least);
        }
        if (field.highest() < most) {
            values.add(field.highest() + 1);
            values.add(most);
        }
        return values;
    }

    @ParameterizedTest
    @EnumSource(SavedField.class)
    void theEndsOfARangeAreTaken(SavedField field) {
        for (long value : new long[] {field.lowest(), field.highest()}) {
            put(0, with(field, value), 1);
            assertEquals(SlotOutcome.NEWEST, ring().open(read), field + " " + value);
            boolean isFlag = field.unit().equals("flag");
            assertEquals(isFlag ? 1 : value, field.get(read), field.name());
        }
    }

    static List<SavedField> bounded() {
        return List.of(SavedField.values()).stream().filter(f -> !outside(f).isEmpty()).toList();
    }

    @ParameterizedTest
    @MethodSource("bounded")
    void theOlderRecordIsTakenInsteadOfAnAbsurdOne(SavedField field) {
        SavedState sound = States.filled(1);
        for (long value : outside(field)) {
            put(1, sound, 5);
            put(2, with(field, value), 6);
            SlotRing ring = ring();
            assertEquals(SlotOutcome.OLDER_ONE_USED, ring.open(read), field + " " + value);
            assertTrue(States.equal(sound, read), field + " " + value);
            assertEquals(1, ring.damagedSlots());
        }
    }

    /** All but flags, which may be any byte. */
    @Test
    void allButTheFlagsHaveARange() {
        assertEquals(SavedField.values().length - 3, bounded().size());
    }

    @Test
    void aCountAboveItsOwnCapacityIsAbsurd() {
        SavedState state = States.filled(3);
        state.chargeNanocoulombs = state.capacityNanocoulombs;
        put(0, state, 1);
        assertEquals(SlotOutcome.NEWEST, ring().open(read));
        state.chargeNanocoulombs++;
        put(0, state, 1);
        assertEquals(SlotOutcome.NONE_VALID, ring().open(read));
    }

    /** The slot of an absurd record is the next to be written, and its neighbour is kept. */
    @Test
    void anAbsurdRecordIsOverwrittenFirst() {
        put(0, States.filled(1), 5);
        put(1, States.filled(2), 4);
        put(2, with(SavedField.SAVES_COUNT, -1), 6);
        SlotRing ring = ring();
        ring.open(read);
        assertEquals(SaveOutcome.SAVED, ring.save(States.filled(9)));
        assertEquals(2, ring.newestSlot());
        assertEquals(SlotOutcome.NEWEST, ring().open(read));
        assertTrue(States.equal(States.filled(9), read));
    }

    @Test
    void theCountOfSavesStopsAtItsEnd() {
        SavedState state = States.filled(4);
        state.savesCount = Integer.MAX_VALUE - 1;
        put(0, state, 1);
        for (int i = 0; i < 3; i++) {
            SlotRing ring = ring();
            ring.open(read);
            assertEquals(SaveOutcome.SAVED, ring.save(States.filled(i)));
        }
        assertEquals(SlotOutcome.NEWEST, ring().open(read));
        assertEquals(Integer.MAX_VALUE, read.savesCount);
    }

    /** A figure that is foreign to every core is so whatever the settings. */
    @Test
    void anAbsurdRecordOfAnotherBatteryIsNoRecordEither() {
        SavedState state = with(SavedField.MINUTES_SINCE_FULL, -1);
        SettingsMark other = new SettingsMark(1, 4, 24_000);
        byte[] record = new SavedStateCodec().encode(state, 1, other);
        System.arraycopy(record, 0, store.cells[0], 0, record.length);
        assertEquals(SlotOutcome.NONE_VALID, ring().open(read));
        assertFalse(SavedStateCodec.isPlausible(record));
    }
}
