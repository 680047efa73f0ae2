package org.gaugebench.sim.memory;

/**
 * One thing wrong with a memory.
 *
 * @param kind what happens
 * @param slot where
 * @param fromMillis since which moment of {@link SimulatedStore#setTimeMillis}
 * @param toMillis until which moment, that one not included; {@link #FOR_EVER} for no end
 * @param afterErases only once the slot was erased this often, the present time included; 0 for at
 *     once
 * @param byteOffset {@link Kind#BIT_ROT}: which byte of the slot
 * @param bitMask {@link Kind#BIT_ROT}: which bits of it flip, 1 to 255
 */
public record MemoryFault(
        Kind kind,
        int slot,
        long fromMillis,
        long toMillis,
        int afterErases,
        int byteOffset,
        int bitMask) {
    /** Stands in {@link #toMillis} for a fault that does not end. */
    public static final long FOR_EVER = Long.MAX_VALUE;

    /** What a memory can do wrong. */
    public enum Kind {
        /** Programming answers "failed" and changes nothing. */
        PROGRAM_ERROR,
        /** Erasing answers "failed" and changes nothing. */
        ERASE_ERROR,
        /** Reading answers "failed". */
        READ_ERROR,
        /** Programming answers "well" and changes nothing. */
        PROGRAM_SILENT,
        /** Erasing answers "well" and changes nothing. */
        ERASE_SILENT,
        /** Bits flip once, at the given moment; the next erase cures them. */
        BIT_ROT,
        /** After so many erases, programming answers "well" and one random bit is wrong. */
        WEAR_OUT
    }

    /** Refuses what cannot be simulated. */
    public MemoryFault {
        if (kind == Kind.BIT_ROT && (bitMask < 1 || bitMask > 255 || byteOffset < 0)) {
            throw new IllegalArgumentException(
                    "bit rot needs a byte offset from 0 and a mask of 1 to 255, got "
                            + byteOffset
                            + " and "
                            + bitMask);
        }
        if (slot < 0 || afterErases < 0) {
            throw new IllegalArgumentException("slot and erases are counted from 0");
        }
    }

    /** A slot that does something wrong from the beginning. */
    public static MemoryFault always(Kind kind, int slot) {
        return new MemoryFault(kind, slot, 0, FOR_EVER, 0, 0, 1);
    }

    /** Bits of one byte flip at a moment. */
    public static MemoryFault bitRot(int slot, long atMillis, int byteOffset, int bitMask) {
        return new MemoryFault(Kind.BIT_ROT, slot, atMillis, FOR_EVER, 0, byteOffset, bitMask);
    }

    /** A slot whose cells hold for so many erases and no longer. */
    public static MemoryFault wearOut(int slot, int goodErases) {
        return new MemoryFault(Kind.WEAR_OUT, slot, 0, FOR_EVER, goodErases + 1, 0, 1);
    }
}
