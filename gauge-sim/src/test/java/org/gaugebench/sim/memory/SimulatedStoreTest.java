package org.gaugebench.sim.memory;

import static org.gaugebench.core.port.StateStore.FAILED;
import static org.gaugebench.core.port.StateStore.OK;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.memory.CutPlan.Manner;
import org.gaugebench.sim.memory.MemoryFault.Kind;
import org.junit.jupiter.api.Test;

class SimulatedStoreTest {
    private static final int BYTES = 16;
    private static final byte[] ONE_TO_EIGHT = {1, 2, 3, 4, 5, 6, 7, 8};

    private final byte[] read = new byte[BYTES];

    private static byte[] blank() {
        byte[] bytes = new byte[BYTES];
        Arrays.fill(bytes, (byte) 0xFF);
        return bytes;
    }

    /** A slot erased and programmed with one to eight, the rest erased. */
    private static byte[] programmed() {
        byte[] bytes = blank();
        System.arraycopy(ONE_TO_EIGHT, 0, bytes, 0, ONE_TO_EIGHT.length);
        return bytes;
    }

    private static SimulatedStore withRecord(MemoryFault... faults) {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1, List.of(faults));
        store.load(0, ONE_TO_EIGHT);
        return store;
    }

    @Test
    void aNewMemoryIsErased() {
        assertArrayEquals(blank(), new SimulatedStore(2, BYTES, 1).bytesOf(1));
    }

    @Test
    void whatIsProgrammedIsReadAndTheRestStaysErased() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        assertEquals(OK, store.erase(1));
        assertEquals(OK, store.program(1, ONE_TO_EIGHT));
        assertEquals(OK, store.read(1, read));
        assertArrayEquals(programmed(), read);
        assertEquals(0, store.misuses());
    }

    @Test
    void aSlotIsProgrammedOnceBetweenTwoErases() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        store.erase(0);
        store.program(0, new byte[] {-1, -1});
        assertEquals(FAILED, store.program(0, ONE_TO_EIGHT), "even where all is still erased");
        assertEquals(1, store.misuses());
    }

    @Test
    void aBlankSlotStillNeedsItsErase() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        assertEquals(FAILED, store.program(0, ONE_TO_EIGHT));
        assertEquals(1, store.misuses());
        assertArrayEquals(blank(), store.bytesOf(0));
    }

    @Test
    void anEraseBeforeARestartDoesNotCount() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        store.erase(0);
        store.powerUp();
        assertEquals(FAILED, store.program(0, ONE_TO_EIGHT));
    }

    @Test
    void slotsAndBytesOutsideAreMisuse() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        assertEquals(FAILED, store.erase(2));
        assertEquals(FAILED, store.erase(-1));
        assertEquals(FAILED, store.read(2, read));
        assertEquals(FAILED, store.read(0, new byte[BYTES + 1]));
        assertEquals(FAILED, store.program(0, new byte[BYTES + 1]));
        assertEquals(5, store.misuses());
    }

    @Test
    void everyCallCountsAsAnOperationAndErasesAsWear() {
        SimulatedStore store = new SimulatedStore(2, BYTES, 1);
        store.erase(0);
        store.program(0, ONE_TO_EIGHT);
        store.read(0, read);
        assertEquals(3, store.operations());
        assertEquals(2, store.writes());
        assertEquals(1, store.reads());
        assertEquals(1, store.erasesOf(0));
        assertEquals(0, store.erasesOf(1));
        store.powerUp();
        assertEquals(0, store.operations());
        assertEquals(2, store.writes());
    }

    @Test
    void aCutEraseLeavesWhatItsMannerSays() {
        byte[] half = blank();
        half[8] = 9;
        for (Manner manner : Manner.values()) {
            SimulatedStore store = new SimulatedStore(2, BYTES, 1);
            byte[] old = new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9, -1, -1, -1, -1, -1, -1, -1};
            store.load(0, old);
            store.setPlan(CutPlan.at(0, manner));
            if (manner == Manner.SILENTLY_NOT_WRITTEN) {
                assertEquals(OK, store.erase(0));
                assertThrows(PowerCut.class, () -> store.program(0, ONE_TO_EIGHT));
            } else {
                assertThrows(PowerCut.class, () -> store.erase(0));
            }
            switch (manner) {
                case NOTHING, SILENTLY_NOT_WRITTEN -> assertArrayEquals(old, store.bytesOf(0));
                case HALF -> assertArrayEquals(half, store.bytesOf(0));
                case GARBAGE -> {
                    assertFalse(Arrays.equals(old, store.bytesOf(0)));
                    assertFalse(Arrays.equals(blank(), store.bytesOf(0)));
                }
            }
        }
    }

    @Test
    void aCutProgramLeavesWhatItsMannerSays() {
        byte[] half = blank();
        System.arraycopy(ONE_TO_EIGHT, 0, half, 0, 4);
        for (Manner manner : Manner.values()) {
            SimulatedStore store = withRecord();
            store.setPlan(CutPlan.at(1, manner));
            store.erase(0);
            if (manner == Manner.SILENTLY_NOT_WRITTEN) {
                assertEquals(OK, store.program(0, ONE_TO_EIGHT));
                assertThrows(PowerCut.class, () -> store.read(0, read));
            } else {
                assertThrows(PowerCut.class, () -> store.program(0, ONE_TO_EIGHT));
            }
            switch (manner) {
                case NOTHING, SILENTLY_NOT_WRITTEN -> assertArrayEquals(blank(), store.bytesOf(0));
                case HALF -> assertArrayEquals(half, store.bytesOf(0));
                case GARBAGE -> {
                    byte[] tail = Arrays.copyOfRange(store.bytesOf(0), 8, BYTES);
                    assertArrayEquals(Arrays.copyOfRange(blank(), 8, BYTES), tail);
                    assertFalse(Arrays.equals(programmed(), store.bytesOf(0)));
                }
            }
        }
    }

    @Test
    void aCutReadLeavesTheMemoryAsItWas() {
        for (Manner manner : Manner.values()) {
            SimulatedStore store = withRecord();
            store.setPlan(CutPlan.at(0, manner));
            if (manner == Manner.SILENTLY_NOT_WRITTEN) {
                store.read(0, read);
            }
            assertThrows(PowerCut.class, () -> store.read(0, read));
            assertArrayEquals(programmed(), store.bytesOf(0));
        }
    }

    @Test
    void theSecondCutComesInTheLifeAfterTheFirstAndPowerStaysInTheThird() {
        SimulatedStore store = withRecord();
        store.setPlan(CutPlan.atBoth(1, Manner.NOTHING, 0, Manner.NOTHING));
        store.read(0, read);
        assertThrows(PowerCut.class, () -> store.read(0, read));
        store.powerUp();
        assertThrows(PowerCut.class, () -> store.read(0, read));
        store.powerUp();
        for (int i = 0; i < 5; i++) {
            assertEquals(OK, store.read(0, read));
        }
    }

    @Test
    void errorsAreAnsweredAndSilentFailuresAreNot() {
        SimulatedStore store = withRecord(MemoryFault.always(Kind.ERASE_ERROR, 0));
        assertEquals(FAILED, store.erase(0));
        assertArrayEquals(programmed(), store.bytesOf(0));
        store = withRecord(MemoryFault.always(Kind.ERASE_SILENT, 0));
        assertEquals(OK, store.erase(0));
        assertEquals(FAILED, store.program(0, ONE_TO_EIGHT), "what is not erased takes nothing");
        assertEquals(0, store.misuses(), "the caller could not know");
        store = withRecord(MemoryFault.always(Kind.PROGRAM_ERROR, 0));
        store.erase(0);
        assertEquals(FAILED, store.program(0, ONE_TO_EIGHT));
        store = withRecord(MemoryFault.always(Kind.PROGRAM_SILENT, 0));
        store.erase(0);
        assertEquals(OK, store.program(0, ONE_TO_EIGHT));
        assertArrayEquals(blank(), store.bytesOf(0));
        store = withRecord(MemoryFault.always(Kind.READ_ERROR, 0));
        assertEquals(FAILED, store.read(0, read));
        assertEquals(OK, store.read(1, read), "the other slot is sound");
    }

    @Test
    void aFaultBeginsAtItsTime() {
        SimulatedStore store =
                withRecord(
                        new MemoryFault(Kind.READ_ERROR, 0, 5_000, MemoryFault.FOR_EVER, 0, 0, 1));
        store.setTimeMillis(4_999);
        assertEquals(OK, store.read(0, read));
        store.setTimeMillis(5_000);
        assertEquals(FAILED, store.read(0, read));
    }

    @Test
    void aFaultEndsAtItsTime() {
        SimulatedStore store = withRecord(new MemoryFault(Kind.READ_ERROR, 0, 0, 5_000, 0, 0, 1));
        store.setTimeMillis(4_999);
        assertEquals(FAILED, store.read(0, read));
        store.setTimeMillis(5_000);
        assertEquals(OK, store.read(0, read));
    }

    @Test
    void aCutAtAWriteCountsErasesAndProgramsFromNowOnAndNoReads() {
        SimulatedStore store = withRecord();
        store.erase(1);
        store.cutAtWrite(2, Manner.HALF);
        store.read(0, read);
        store.program(1, ONE_TO_EIGHT);
        store.read(1, read);
        assertArrayEquals(programmed(), read);
        assertThrows(PowerCut.class, () -> store.erase(0));
        store.powerUp();
        assertEquals(OK, store.erase(0), "once");
    }

    @Test
    void bitsRotOnceAtTheirTimeAndAreCuredByAnErase() {
        SimulatedStore store = withRecord(MemoryFault.bitRot(0, 1_000, 2, 0x81));
        store.setTimeMillis(999);
        assertArrayEquals(programmed(), store.bytesOf(0));
        store.setTimeMillis(1_000);
        assertEquals((byte) (3 ^ 0x81), store.bytesOf(0)[2]);
        store.erase(0);
        store.setTimeMillis(2_000);
        assertArrayEquals(blank(), store.bytesOf(0));
    }

    @Test
    void aWornSlotHoldsItsNumberOfErasesAndNoMore() {
        SimulatedStore store = withRecord(MemoryFault.wearOut(0, 3));
        for (int i = 0; i < 3; i++) {
            store.erase(0);
            store.program(0, ONE_TO_EIGHT);
            assertArrayEquals(programmed(), store.bytesOf(0), "erase " + i);
        }
        store.erase(0);
        assertEquals(OK, store.program(0, ONE_TO_EIGHT));
        byte[] worn = store.bytesOf(0);
        int wrongBits = 0;
        for (int i = 0; i < BYTES; i++) {
            wrongBits += Integer.bitCount((worn[i] ^ programmed()[i]) & 0xFF);
        }
        assertEquals(1, wrongBits);
    }

    @Test
    void theSameSeedScattersTheSameBytes() {
        byte[][] bytes = new byte[3][];
        long[] seeds = {7, 7, 8};
        for (int i = 0; i < 3; i++) {
            SimulatedStore store = new SimulatedStore(1, BYTES, seeds[i]);
            store.setPlan(CutPlan.at(0, Manner.GARBAGE));
            assertThrows(PowerCut.class, () -> store.erase(0));
            bytes[i] = store.bytesOf(0);
        }
        assertArrayEquals(bytes[0], bytes[1]);
        assertFalse(Arrays.equals(bytes[0], bytes[2]));
    }

    @Test
    void whatCannotBeSimulatedIsRefused() {
        assertThrows(
                IllegalArgumentException.class, () -> withRecord(MemoryFault.bitRot(0, 0, 0, 0)));
        assertThrows(
                IllegalArgumentException.class,
                () -> withRecord(MemoryFault.bitRot(0, 0, BYTES, 1)));
        assertThrows(
                IllegalArgumentException.class,
                () -> withRecord(MemoryFault.always(Kind.READ_ERROR, 2)));
        assertThrows(IllegalArgumentException.class, () -> CutPlan.at(-1, Manner.HALF));
    }
}
