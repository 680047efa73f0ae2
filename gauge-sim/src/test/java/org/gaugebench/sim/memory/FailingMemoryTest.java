package org.gaugebench.sim.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.core.saved.SaveOutcome;
import org.gaugebench.core.saved.SaveReason;
import org.gaugebench.core.saved.SaveSchedule;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.saved.SlotRing;
import org.gaugebench.sim.memory.MemoryFault.Kind;
import org.gaugebench.sim.random.SplitMix64;
import org.junit.jupiter.api.Test;

/** The ring on memories that fail, rot and wear out; and cuts at random moments of a discharge. */
class FailingMemoryTest {
    private static final int SLOT_BYTES = 256;
    private static final int RECORD_BYTES = 224;
    private static final SettingsMark SETTINGS = new SettingsMark(1, 1, 12_000);
    private static final long AMP_HOUR = 3_600_000_000_000L;

    private final SavedState read = new SavedState();

    private static SavedState state(int number) {
        SavedState state = new SavedState();
        state.chargeNanocoulombs = number;
        state.capacityNanocoulombs = 100 * AMP_HOUR;
        return state;
    }

    private static SlotRing ring(SimulatedStore store) {
        return new SlotRing(store, SETTINGS);
    }

    private void assertRestores(SimulatedStore store, SlotOutcome outcome, int number) {
        assertEquals(outcome, ring(store).open(read));
        assertEquals(number, read.chargeNanocoulombs);
    }

    @Test
    void anyRottenByteAnywhereFallsBackToTheOlderRecord() {
        int checked = 0;
        for (int offset = 0; offset < RECORD_BYTES; offset++) {
            for (int mask : new int[] {0x01, 0x80, 0xFF}) {
                SimulatedStore store =
                        new SimulatedStore(
                                2, SLOT_BYTES, 1, List.of(MemoryFault.bitRot(1, 1, offset, mask)));
                SlotRing ring = ring(store);
                ring.save(state(1));
                ring.save(state(2));
                assertRestores(store, SlotOutcome.NEWEST, 2);
                store.setTimeMillis(1);
                assertRestores(store, SlotOutcome.OLDER_ONE_USED, 1);
                checked++;
            }
        }
        System.out.println("bit rot: " + checked + " rotten bytes, each fell back");
    }

    @Test
    void rotBehindTheRecordHarmsNothing() {
        SimulatedStore store =
                new SimulatedStore(
                        2, SLOT_BYTES, 1, List.of(MemoryFault.bitRot(1, 1, RECORD_BYTES, 1)));
        SlotRing ring = ring(store);
        ring.save(state(1));
        ring.save(state(2));
        store.setTimeMillis(1);
        assertRestores(store, SlotOutcome.NEWEST, 2);
    }

    @Test
    void withADeadSlotTheOthersGoOnAndTheFaultIsRaisedOnce() {
        for (Kind kind :
                new Kind[] {
                    Kind.PROGRAM_ERROR,
                    Kind.ERASE_ERROR,
                    Kind.READ_ERROR,
                    Kind.PROGRAM_SILENT,
                    Kind.ERASE_SILENT
                }) {
            SimulatedStore store =
                    new SimulatedStore(
                            4,
                            SLOT_BYTES,
                            1,
                            List.of(new MemoryFault(kind, 2, 1, MemoryFault.FOR_EVER, 0, 0, 1)));
            SlotRing ring = ring(store);
            for (int i = 1; i <= 5; i++) {
                assertEquals(SaveOutcome.SAVED, ring.save(state(i)));
            }
            store.setTimeMillis(1);
            int faults = 0;
            for (int i = 6; i <= 40; i++) {
                SaveOutcome outcome = ring.save(state(i));
                assertTrue(outcome.isSaved(), kind.name());
                faults += outcome.isMemoryFault() ? 1 : 0;
                ring(store).open(read);
                assertEquals(i, read.chargeNanocoulombs, kind.name());
            }
            assertEquals(1, faults, kind.name());
            assertEquals(1, ring.failedSlots(), kind.name());
            assertEquals(0, store.misuses());
        }
    }

    /** Slots of 50 erases are worn to the last; every state that a save confirmed is there. */
    @Test
    void aWornMemoryRaisesTheFaultLongBeforeTheLastSlotIsGone() {
        SimulatedStore store =
                new SimulatedStore(
                        4,
                        SLOT_BYTES,
                        1,
                        List.of(
                                MemoryFault.wearOut(0, 50),
                                MemoryFault.wearOut(1, 60),
                                MemoryFault.wearOut(2, 70),
                                MemoryFault.wearOut(3, 80)));
        SlotRing ring = ring(store);
        int firstFault = 0;
        int lastSaved = 0;
        for (int i = 1; i <= 400; i++) {
            SaveOutcome outcome = ring.save(state(i));
            firstFault = firstFault == 0 && outcome.isMemoryFault() ? i : firstFault;
            if (outcome.isSaved()) {
                lastSaved = i;
            }
            ring(store).open(read);
            assertEquals(lastSaved, read.chargeNanocoulombs, "after save " + i);
        }
        System.out.println(
                "wear: rated 260 erases, first fault at save "
                        + firstFault
                        + ", last good save "
                        + lastSaved);
        assertEquals(201, firstFault, "the weakest of four slots lasts 4 x 50 saves");
        assertTrue(lastSaved >= 250, "last good save " + lastSaved);
    }

    /** A hundred amps through 100 Ah, power gone at a random second, a thousand times. */
    @Test
    void aCutAtARandomMomentCostsAtMostAStepAndATick() {
        SplitMix64 random = new SplitMix64(11);
        long perSecond = 100_000_000L * 1_000L;
        long worst = 0;
        for (int trial = 0; trial < 1_000; trial++) {
            SimulatedStore store = new SimulatedStore(3, SLOT_BYTES, trial);
            SlotRing ring = ring(store);
            SaveSchedule schedule = new SaveSchedule(100 * AMP_HOUR, 5_000, 12_000);
            SavedState state = state(0);
            long count = 100 * AMP_HOUR;
            schedule.powerUp(count, 0);
            schedule.anchored();
            int seconds = 2 + (int) Long.remainderUnsigned(random.nextLong(), 3_000);
            for (int second = 0; second < seconds; second++) {
                count -= perSecond;
                long gross = 100 * AMP_HOUR - count;
                if (schedule.due(count, gross, 12_500_000, 1_000) != SaveReason.NONE) {
                    state.chargeNanocoulombs = count;
                    assertEquals(SaveOutcome.SAVED, ring.save(state));
                    schedule.attempted(count, gross);
                }
            }
            ring(store).open(read);
            worst = Math.max(worst, Math.abs(read.chargeNanocoulombs - count));
        }
        System.out.println("random cuts: worst loss " + worst + " nC of a step of " + AMP_HOUR / 2);
        assertTrue(worst <= AMP_HOUR / 2 + perSecond, "worst " + worst);
        assertTrue(worst >= AMP_HOUR / 2 - 2 * perSecond, "the worst case was not met: " + worst);
    }

    /** Cranking: power comes and goes ten times in three seconds, with the volts on the floor. */
    @Test
    void tenBrownOutsInThreeSecondsWearOutNothing() {
        SimulatedStore store = new SimulatedStore(2, SLOT_BYTES, 1);
        long count = 60 * AMP_HOUR;
        SavedState state = state(0);
        state.chargeNanocoulombs = count;
        ring(store).save(state);
        int writes = store.writes();
        long truth = count;
        for (int brownOut = 0; brownOut < 10; brownOut++) {
            store.powerUp();
            SlotRing ring = ring(store);
            assertEquals(SlotOutcome.NEWEST, ring.open(read));
            count = read.chargeNanocoulombs;
            SaveSchedule schedule = new SaveSchedule(100 * AMP_HOUR, 5_000, 12_000);
            schedule.powerUp(count, 0);
            for (int i = 0; i < 5; i++) {
                long moved = 500_000_000L * 60;
                count -= moved;
                truth -= moved;
                int microvolts = 12_600_000 - i * 1_900_000;
                if (schedule.due(count, 0, microvolts, 60) != SaveReason.NONE) {
                    ring.save(state);
                }
            }
        }
        assertEquals(writes, store.writes());
        assertTrue(Math.abs(60 * AMP_HOUR - truth) <= AMP_HOUR / 2, "within a save step");
    }
}
