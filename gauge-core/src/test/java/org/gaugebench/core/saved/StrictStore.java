package org.gaugebench.core.saved;

import java.util.Arrays;
import org.gaugebench.core.port.StateStore;

/**
 * A memory in an array that refuses to program what is not erased. It counts its operations, can
 * lose power at one of them and can have slots that fail. The simulator's memory does more; this
 * one keeps the core's own tests free of the simulator.
 */
public final class StrictStore implements StateStore {
    /** What a slot does wrong. */
    public enum Defect {
        NONE,
        ERASE_FAILS,
        PROGRAM_FAILS,
        PROGRAM_SILENT,
        ERASE_SILENT,
        READ_FAILS,
        READ_FAILS_ONCE
    }

    /** Power is gone; the machine's memory with it. */
    public static final class PowerGone extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    public final byte[][] cells;
    public final Defect[] defects;
    public final int[] erases;
    int operations;
    public int writes;
    int cutAt = -1;

    /** How many bytes of the operation under way are done when power goes. */
    int cutAfterBytes;

    public StrictStore(int slots, int slotBytes) {
        cells = new byte[slots][slotBytes];
        defects = new Defect[slots];
        erases = new int[slots];
        for (int i = 0; i < slots; i++) {
            Arrays.fill(cells[i], (byte) 0xFF);
            defects[i] = Defect.NONE;
        }
    }

    @Override
    public int slots() {
        return cells.length;
    }

    @Override
    public int slotBytes() {
        return cells.length == 0 ? 0 : cells[0].length;
    }

    @Override
    public int read(int slot, byte[] destination) {
        if (isCutNow()) {
            throw new PowerGone();
        }
        if (defects[slot] == Defect.READ_FAILS_ONCE) {
            defects[slot] = Defect.NONE;
            return FAILED;
        }
        if (defects[slot] == Defect.READ_FAILS) {
            return FAILED;
        }
        System.arraycopy(cells[slot], 0, destination, 0, destination.length);
        return OK;
    }

    @Override
    public int erase(int slot) {
        boolean cut = isCutNow();
        writes++;
        erases[slot]++;
        if (defects[slot] == Defect.ERASE_FAILS) {
            return FAILED;
        }
        if (defects[slot] == Defect.ERASE_SILENT) {
            return OK;
        }
        Arrays.fill(cells[slot], 0, cut ? cutAfterBytes : cells[slot].length, (byte) 0xFF);
        if (cut) {
            throw new PowerGone();
        }
        return OK;
    }

    @Override
    public int program(int slot, byte[] source) {
        boolean cut = isCutNow();
        writes++;
        if (defects[slot] == Defect.PROGRAM_FAILS) {
            return FAILED;
        }
        if (defects[slot] == Defect.PROGRAM_SILENT) {
            return OK;
        }
        for (int i = 0; i < source.length; i++) {
            if (cells[slot][i] != (byte) 0xFF) {
                return FAILED;
            }
        }
        System.arraycopy(source, 0, cells[slot], 0, cut ? cutAfterBytes : source.length);
        if (cut) {
            throw new PowerGone();
        }
        return OK;
    }

    private boolean isCutNow() {
        return operations++ == cutAt;
    }
}
