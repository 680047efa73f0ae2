package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.saved.StrictStore.Defect;
import org.junit.jupiter.api.Test;

class SlotRingTest {
    private static final int SLOT_BYTES = 256;
    private static final int RECORD_BYTES = SavedStateLayout.recordBytes(SavedStateLayout.VERSION);

    private final SavedState read = new SavedState();

    private static SlotRing ring(StateStore store) {
        return new SlotRing(store, States.SETTINGS);
    }

    /** A store in which the states 1 to count were saved. */
    private static StrictStore storeWith(int slots, int count) {
        StrictStore store = new StrictStore(slots, SLOT_BYTES);
        SlotRing ring = ring(store);
        for (int seed = 1; seed <= count; seed++) {
            assertEquals(SaveOutcome.SAVED, ring.save(States.filled(seed)));
        }
        return store;
    }

    private void assertHolds(StrictStore store, SlotOutcome outcome, int seed) {
        assertEquals(outcome, ring(store).open(read));
        assertTrue(States.equal(States.filled(seed), read), "not state " + seed);
    }

    @Test
    void anEmptyMemoryIsNoneValidAndLeavesTheStateAlone() {
        SavedState untouched = States.filled(5);
        assertEquals(SlotOutcome.NONE_VALID, ring(storeWith(2, 0)).open(untouched));
        assertTrue(States.equal(States.filled(5), untouched));
    }

    @Test
    void theLastOfAnyNumberOfSavesIsRestored() {
        for (int slots = 2; slots <= 5; slots++) {
            for (int count = 1; count <= 12; count++) {
                assertHolds(storeWith(slots, count), SlotOutcome.NEWEST, count);
            }
        }
    }

    @Test
    void openingWritesNothing() {
        StrictStore store = storeWith(3, 4);
        int before = store.writes;
        ring(store).open(read);
        assertEquals(before, store.writes);
    }

    @Test
    void theSlotsWearEvenly() {
        StrictStore store = storeWith(4, 400);
        assertArrayEquals(new int[] {100, 100, 100, 100}, store.erases);
    }

    @Test
    void savesAreCountedThroughRestarts() {
        StrictStore store = storeWith(3, 7);
        ring(store).open(read);
        assertEquals(7, read.savesCount);
        SlotRing ring = ring(store);
        ring.open(read);
        ring.save(read);
        ring(store).open(read);
        assertEquals(8, read.savesCount);
    }

    @Test
    void aSaveWithoutOpeningFirstStillKeepsTheNewestRecord() {
        StrictStore store = storeWith(2, 3);
        int newest = newestSlotOf(store);
        byte[] before = store.cells[newest].clone();
        SlotRing ring = ring(store);
        assertEquals(SaveOutcome.SAVED, ring.save(States.filled(4)));
        assertArrayEquals(before, store.cells[newest]);
        assertHolds(store, SlotOutcome.NEWEST, 4);
    }

    private int newestSlotOf(StrictStore store) {
        SlotRing ring = ring(store);
        ring.open(read);
        return ring.newestSlot();
    }

    @Test
    void theSequenceWrapsWithoutALoss() {
        StrictStore store = new StrictStore(3, SLOT_BYTES);
        byte[] record = new SavedStateCodec().encode(States.filled(1), -2, States.SETTINGS).clone();
        System.arraycopy(record, 0, store.cells[1], 0, record.length);
        for (int seed = 2; seed < 9; seed++) {
            SlotRing ring = ring(store);
            ring.open(read);
            assertEquals(SaveOutcome.SAVED, ring.save(States.filled(seed)));
            assertHolds(store, SlotOutcome.NEWEST, seed);
        }
    }

    @Test
    void powerGoneAfterAnyByteOfASaveLeavesTheOldOrTheNewRecord() {
        int cuts = 0;
        for (int slots = 2; slots <= 3; slots++) {
            for (int saved = 0; saved <= slots + 1; saved++) {
                int operations = operationsOfOneSave(slots, saved);
                for (int cutAt = 0; cutAt < operations; cutAt++) {
                    for (int bytes = 0; bytes <= RECORD_BYTES; bytes++) {
                        cutAndCheck(slots, saved, cutAt, bytes);
                        cuts++;
                    }
                }
            }
        }
        System.out.println("slot ring: power gone after each byte, " + cuts + " cuts");
    }

    private static int operationsOfOneSave(int slots, int saved) {
        StrictStore store = storeWith(slots, saved);
        SlotRing ring = ring(store);
        ring.open(new SavedState());
        int before = store.operations;
        ring.save(States.filled(saved + 1));
        return store.operations - before;
    }

    private void cutAndCheck(int slots, int saved, int cutAt, int bytes) {
        StrictStore store = storeWith(slots, saved);
        SlotRing ring = ring(store);
        ring.open(read);
        store.cutAt = store.operations + cutAt;
        store.cutAfterBytes = bytes;
        SavedState next = States.filled(saved + 1);
        assertThrows(StrictStore.PowerGone.class, () -> ring.save(next));
        store.cutAt = -1;
        SlotOutcome outcome = ring(store).open(read);
        String where = saved + " saved, cut " + cutAt + " after " + bytes + " bytes";
        if (outcome == SlotOutcome.NONE_VALID) {
            assertEquals(0, saved, where);
        } else {
            boolean old = States.equal(States.filled(saved), read) && saved > 0;
            assertTrue(old || States.equal(next, read), where);
        }
        // And the ring goes on.
        SlotRing after = ring(store);
        after.open(read);
        assertEquals(SaveOutcome.SAVED, after.save(States.filled(1000)), where);
        assertHolds(store, SlotOutcome.NEWEST, 1000);
    }

    @Test
    void anyByteFlipInTheNewestRecordFallsBackToTheOneBefore() {
        StrictStore store = storeWith(3, 5);
        int newest = newestSlotOf(store);
        for (int i = 0; i < RECORD_BYTES; i++) {
            store.cells[newest][i] ^= 0x10;
            assertHolds(store, SlotOutcome.OLDER_ONE_USED, 4);
            store.cells[newest][i] ^= 0x10;
        }
    }

    @Test
    void aDamagedSlotIsWrittenFirstAndMakesTheMemoryWholeAgain() {
        StrictStore store = storeWith(4, 8);
        store.cells[newestSlotOf(store)][30] ^= 1;
        SlotRing ring = ring(store);
        ring.open(read);
        assertEquals(1, ring.damagedSlots());
        ring.save(States.filled(9));
        SlotRing again = ring(store);
        assertEquals(SlotOutcome.NEWEST, again.open(read));
        assertEquals(0, again.damagedSlots());
    }

    @Test
    void aRecordOfOtherSettingsIsHandedOver() {
        StrictStore store = storeWith(2, 2);
        SettingsMark edited = new SettingsMark(1, 1, 12_000);
        assertEquals(SlotOutcome.FOREIGN_SETTINGS, new SlotRing(store, edited).open(read));
        assertTrue(States.equal(States.filled(2), read));
    }

    @Test
    void aRecordOfAnotherBatteryIsNotHandedOver() {
        StrictStore store = storeWith(2, 2);
        SettingsMark other = new SettingsMark(0x600DF00D, 1, 24_000);
        SavedState untouched = States.filled(77);
        assertEquals(SlotOutcome.FOREIGN_BATTERY, new SlotRing(store, other).open(untouched));
        assertTrue(States.equal(States.filled(77), untouched));
    }

    @Test
    void changedSettingsAreInTheNextRecord() {
        StrictStore store = storeWith(2, 2);
        SettingsMark edited = new SettingsMark(1, 1, 12_000);
        SlotRing ring = ring(store);
        ring.open(read);
        ring.changeSettings(edited);
        ring.save(read);
        assertEquals(SlotOutcome.NEWEST, new SlotRing(store, edited).open(read));
    }

    @Test
    void aDeadSlotIsPassedOverAndReported() {
        for (Defect defect :
                new Defect[] {
                    Defect.ERASE_FAILS,
                    Defect.PROGRAM_FAILS,
                    Defect.PROGRAM_SILENT,
                    Defect.ERASE_SILENT,
                    Defect.READ_FAILS
                }) {
            StrictStore store = storeWith(3, 6);
            SlotRing ring = ring(store);
            ring.open(read);
            int dead = (ring.newestSlot() + 1) % 3;
            store.defects[dead] = defect;
            assertEquals(SaveOutcome.SAVED_AFTER_FAILURE, ring.save(States.filled(7)));
            assertEquals(1, ring.failedSlots());
            int erasesBefore = store.erases[dead];
            for (int seed = 8; seed < 20; seed++) {
                assertEquals(SaveOutcome.SAVED, ring.save(States.filled(seed)), defect.name());
                ring(store).open(read);
                assertTrue(States.equal(States.filled(seed), read), defect + " " + seed);
            }
            assertEquals(erasesBefore, store.erases[dead], "a dead slot is tried once a power-up");
        }
    }

    /** The same object may see power come up again. */
    @Test
    void openingAgainTriesAFailedSlotAgain() {
        StrictStore store = storeWith(3, 6);
        SlotRing ring = ring(store);
        ring.open(read);
        int dead = (ring.newestSlot() + 1) % 3;
        store.defects[dead] = Defect.ERASE_FAILS;
        ring.save(States.filled(7));
        assertEquals(1, ring.failedSlots());
        store.defects[dead] = Defect.NONE;
        ring.open(read);
        assertEquals(0, ring.failedSlots());
        int erasesBefore = store.erases[dead];
        ring.save(States.filled(8));
        assertEquals(erasesBefore + 1, store.erases[dead]);
    }

    @Test
    void withOneOfTwoSlotsDeadTheNewestRecordIsNeverTouched() {
        StrictStore store = storeWith(2, 2);
        SlotRing ring = ring(store);
        ring.open(read);
        int newest = ring.newestSlot();
        byte[] before = store.cells[newest].clone();
        store.defects[1 - newest] = Defect.PROGRAM_FAILS;
        for (int i = 0; i < 3; i++) {
            assertEquals(SaveOutcome.NOT_SAVED, ring.save(States.filled(9)));
            assertArrayEquals(before, store.cells[newest]);
        }
        store.defects[1 - newest] = Defect.NONE;
        assertEquals(SaveOutcome.SAVED, ring.save(States.filled(10)), "a slot that recovered");
        assertEquals(0, ring.failedSlots());
        assertHolds(store, SlotOutcome.NEWEST, 10);
    }

    /** The failed attempt left a record that checks; the one that replaced it must win. */
    @Test
    void aSlotThatFailedOnlyOnReadingBackNeverWinsLater() {
        StrictStore store = storeWith(3, 6);
        SlotRing ring = ring(store);
        ring.open(read);
        int victim = (ring.newestSlot() + 1) % 3;
        store.defects[victim] = Defect.READ_FAILS_ONCE;
        assertEquals(SaveOutcome.SAVED_AFTER_FAILURE, ring.save(States.filled(7)));
        assertHolds(store, SlotOutcome.NEWEST, 7);
        for (int seed = 8; seed < 12; seed++) {
            ring.save(States.filled(seed));
            assertHolds(store, SlotOutcome.NEWEST, seed);
        }
    }

    /** Slot 0 keeps a record of a save that failed; slot 2 takes the next one. */
    @Test
    void aFailedSaveThatLeftARecordNeverWinsOverTheNextSave() {
        StrictStore store = storeWith(3, 5);
        SlotRing ring = ring(store);
        ring.open(read);
        assertEquals(1, ring.newestSlot());
        store.defects[2] = Defect.PROGRAM_FAILS;
        store.defects[0] = Defect.READ_FAILS_ONCE;
        assertEquals(SaveOutcome.NOT_SAVED, ring.save(States.filled(6)));
        store.defects[2] = Defect.NONE;
        assertEquals(SaveOutcome.SAVED, ring.save(States.filled(7)));
        assertHolds(store, SlotOutcome.NEWEST, 7);
    }

    @Test
    void aSlotThatAnswersOnlyTheSecondTimeIsBelieved() {
        StrictStore store = storeWith(2, 2);
        store.defects[newestSlotOf(store)] = Defect.READ_FAILS_ONCE;
        assertHolds(store, SlotOutcome.NEWEST, 2);
    }

    @Test
    void storesThatCannotHoldARingAnswerSo() {
        StateStore[] stores = {
            StateStore.NONE, new StrictStore(1, SLOT_BYTES), new StrictStore(4, RECORD_BYTES - 1)
        };
        for (StateStore store : stores) {
            SlotRing ring = ring(store);
            assertEquals(SlotOutcome.NONE_VALID, ring.open(read));
            assertEquals(SaveOutcome.NO_STORE, ring.save(read));
            assertFalse(SaveOutcome.NO_STORE.isMemoryFault());
            assertFalse(SaveOutcome.NO_STORE.isSaved());
        }
        assertEquals(SaveOutcome.SAVED, ring(new StrictStore(2, RECORD_BYTES)).save(read));
    }

    @Test
    void theWordsOfASaveSayWhatTheGaugeMustKnow() {
        assertTrue(SaveOutcome.SAVED.isSaved());
        assertFalse(SaveOutcome.SAVED.isMemoryFault());
        assertTrue(SaveOutcome.SAVED_AFTER_FAILURE.isMemoryFault());
        assertFalse(SaveOutcome.NOT_SAVED.isSaved());
        assertTrue(SaveOutcome.NOT_SAVED.isMemoryFault());
        assertTrue(SaveOutcome.SAVED_AFTER_FAILURE.isSaved());
    }

    /** After power-up the headers come from the slots and not from saves: the wear stays even. */
    @Test
    void theSlotsWearEvenlyAfterAPowerUpToo() {
        StrictStore store = storeWith(4, 8);
        SlotRing ring = ring(store);
        ring.open(read);
        for (int seed = 9; seed <= 400; seed++) {
            ring.save(States.filled(seed));
        }
        assertArrayEquals(new int[] {100, 100, 100, 100}, store.erases);
    }

    /** A machine without a memory fails each call, so nobody takes its bytes for a record. */
    @Test
    void noMemoryKeepsNothing() {
        assertEquals(StateStore.FAILED, StateStore.NONE.read(0, new byte[0]));
        assertEquals(StateStore.FAILED, StateStore.NONE.erase(0));
        assertEquals(StateStore.FAILED, StateStore.NONE.program(0, new byte[0]));
        assertEquals(SaveOutcome.NO_STORE, ring(StateStore.NONE).save(States.filled(1)));
    }
}
