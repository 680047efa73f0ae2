package org.gaugebench.sim.memory;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.memory.CutPlan.Cut;
import org.gaugebench.sim.memory.CutPlan.Manner;
import org.gaugebench.sim.memory.MemoryFault.Kind;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.random.SplitMix64;
import org.jspecify.annotations.Nullable;

/**
 * A memory in an array, stricter than a real one on purpose: a slot is erased whole, programmed
 * once between two erases, and only where every byte to be programmed is erased. Whoever breaks
 * that is answered "failed" and counted as misuse, which a test then refuses.
 *
 * <p>It counts operations and wear, loses power by a {@link CutPlan}, and fails by a list of {@link
 * MemoryFault}. Same seed, plan, faults and calls: same bytes.
 */
public final class SimulatedStore implements StateStore {
    private static final byte ERASED = (byte) 0xFF;

    // Parameters.
    private final byte[][] cells;
    private final List<MemoryFault> faults;
    private final SplitMix64 random;

    // State that survives a power cut.
    private final int[] erases;
    private final boolean[] rotted;
    private long timeMillis;

    // State of the running life.
    private final boolean[] freshlyErased;
    private CutPlan plan = CutPlan.NONE;
    private int life;
    private int operation;
    private boolean cutAtNext;
    private int writesBeforeCut;
    private Manner cutManner = Manner.NOTHING;

    // Counters over all lives.
    private int reads;
    private int writes;
    private int misuses;

    /** A sound memory. */
    public SimulatedStore(int slots, int slotBytes, long seed) {
        this(slots, slotBytes, seed, List.of());
    }

    /** A memory with faults. */
    public SimulatedStore(int slots, int slotBytes, long seed, List<MemoryFault> faults) {
        cells = new byte[slots][slotBytes];
        for (byte[] slot : cells) {
            Arrays.fill(slot, ERASED);
        }
        for (MemoryFault fault : faults) {
            if (fault.slot() >= slots || fault.byteOffset() >= slotBytes) {
                throw new IllegalArgumentException(
                        fault + " lies outside " + slots + " slots of " + slotBytes + " bytes");
            }
        }
        this.faults = List.copyOf(faults);
        random = new SplitMix64(new SeedTree(seed).seedOf("memory"));
        erases = new int[slots];
        rotted = new boolean[faults.size()];
        freshlyErased = new boolean[slots];
    }

    /** Lays down when power goes; the present life is the plan's first. */
    public void setPlan(CutPlan plan) {
        this.plan = plan;
        life = 0;
        beginLife();
    }

    /**
     * Lays down that power goes at a write to come: a cut beside those of the plan, forgotten when
     * power goes before.
     *
     * @param writesFromNow 1 for the next erase or program; 0 for no cut
     * @param manner what that write leaves behind
     */
    public void cutAtWrite(int writesFromNow, Manner manner) {
        writesBeforeCut = writesFromNow;
        cutManner = manner;
    }

    /** Power came back after a {@link PowerCut} or an ordinary switch-off. */
    public void powerUp() {
        life++;
        beginLife();
    }

    private void beginLife() {
        operation = 0;
        cutAtNext = false;
        writesBeforeCut = 0;
        Arrays.fill(freshlyErased, false);
    }

    /** Tells the memory what time it is, so that faults that begin later can begin. */
    public void setTimeMillis(long timeMillis) {
        this.timeMillis = timeMillis;
        for (int i = 0; i < faults.size(); i++) {
            MemoryFault fault = faults.get(i);
            if (fault.kind() == Kind.BIT_ROT && !rotted[i] && timeMillis >= fault.fromMillis()) {
                rotted[i] = true;
                cells[fault.slot()][fault.byteOffset()] ^= (byte) fault.bitMask();
            }
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
        reads++;
        Manner manner = mannerNow(false);
        if (manner != null && manner != Manner.SILENTLY_NOT_WRITTEN) {
            throw cut();
        }
        if (isMisuse(slot, destination.length) || has(Kind.READ_ERROR, slot)) {
            return FAILED;
        }
        System.arraycopy(cells[slot], 0, destination, 0, destination.length);
        return OK;
    }

    @Override
    public int erase(int slot) {
        writes++;
        Manner manner = mannerNow(true);
        if (isMisuse(slot, 0)) {
            return FAILED;
        }
        if (manner == Manner.NOTHING) {
            throw cut();
        }
        erases[slot]++;
        if (manner == Manner.SILENTLY_NOT_WRITTEN || has(Kind.ERASE_SILENT, slot)) {
            freshlyErased[slot] = true;
            return OK;
        }
        if (has(Kind.ERASE_ERROR, slot)) {
            return FAILED;
        }
        if (manner == Manner.GARBAGE) {
            scatter(slot, slotBytes());
            throw cut();
        }
        int bytes = manner == Manner.HALF ? slotBytes() / 2 : slotBytes();
        Arrays.fill(cells[slot], 0, bytes, ERASED);
        if (manner == Manner.HALF) {
            throw cut();
        }
        freshlyErased[slot] = true;
        return OK;
    }

    @Override
    public int program(int slot, byte[] source) {
        writes++;
        Manner manner = mannerNow(true);
        if (isMisuse(slot, source.length)) {
            return FAILED;
        }
        if (!freshlyErased[slot]) {
            misuses++;
            return FAILED;
        }
        freshlyErased[slot] = false;
        if (manner == Manner.NOTHING) {
            throw cut();
        }
        if (manner == Manner.SILENTLY_NOT_WRITTEN || has(Kind.PROGRAM_SILENT, slot)) {
            return OK;
        }
        if (has(Kind.PROGRAM_ERROR, slot) || !isErased(slot, source.length)) {
            return FAILED;
        }
        if (manner == Manner.GARBAGE) {
            scatter(slot, source.length);
            throw cut();
        }
        int bytes = manner == Manner.HALF ? source.length / 2 : source.length;
        System.arraycopy(source, 0, cells[slot], 0, bytes);
        if (manner == Manner.HALF) {
            throw cut();
        }
        if (has(Kind.WEAR_OUT, slot)) {
            flipOneBit(slot, source.length);
        }
        return OK;
    }

    /** Counts the operation; what becomes of it when power goes now, or null when power stays. */
    private @Nullable Manner mannerNow(boolean isWrite) {
        int now = operation++;
        if (cutAtNext) {
            return Manner.NOTHING;
        }
        if (isWrite && writesBeforeCut > 0) {
            writesBeforeCut--;
            if (writesBeforeCut == 0) {
                cutAtNext = cutManner == Manner.SILENTLY_NOT_WRITTEN;
                return cutManner;
            }
        }
        if (life >= plan.cuts().size() || plan.cuts().get(life).operation() != now) {
            return null;
        }
        Cut cut = plan.cuts().get(life);
        cutAtNext = cut.manner() == Manner.SILENTLY_NOT_WRITTEN;
        return cut.manner();
    }

    /** Whether a cut is laid down for this life and has not come yet. */
    public boolean isCutDue() {
        return writesBeforeCut > 0 || cutAtNext || life < plan.cuts().size();
    }

    private PowerCut cut() {
        return new PowerCut(operation - 1);
    }

    private boolean isMisuse(int slot, int bytes) {
        boolean misuse = slot < 0 || slot >= cells.length || bytes > slotBytes();
        misuses += misuse ? 1 : 0;
        return misuse;
    }

    private boolean has(Kind kind, int slot) {
        for (MemoryFault fault : faults) {
            if (fault.kind() == kind
                    && fault.slot() == slot
                    && timeMillis >= fault.fromMillis()
                    && timeMillis < fault.toMillis()
                    && erases[slot] >= fault.afterErases()) {
                return true;
            }
        }
        return false;
    }

    private boolean isErased(int slot, int bytes) {
        for (int i = 0; i < bytes; i++) {
            if (cells[slot][i] != ERASED) {
                return false;
            }
        }
        return true;
    }

    private void scatter(int slot, int bytes) {
        for (int i = 0; i < bytes; i++) {
            cells[slot][i] = (byte) random.nextLong();
        }
    }

    private void flipOneBit(int slot, int bytes) {
        int bit = (int) Long.remainderUnsigned(random.nextLong(), bytes * 8L);
        cells[slot][bit / 8] ^= (byte) (1 << (bit % 8));
    }

    /** Operations of the present life, reads included. */
    public int operations() {
        return operation;
    }

    /** Reads over all lives. */
    public int reads() {
        return reads;
    }

    /** Erases and programs over all lives. */
    public int writes() {
        return writes;
    }

    /** Calls that no real driver allows: a slot outside, too many bytes, a program unerased. */
    public int misuses() {
        return misuses;
    }

    /** How often a slot was erased: its wear. */
    public int erasesOf(int slot) {
        return erases[slot];
    }

    /** A copy of a slot's bytes. */
    public byte[] bytesOf(int slot) {
        return cells[slot].clone();
    }

    /** Puts bytes into a slot from its start, as an earlier firmware left them. */
    public void load(int slot, byte[] bytes) {
        System.arraycopy(bytes, 0, cells[slot], 0, bytes.length);
    }
}
