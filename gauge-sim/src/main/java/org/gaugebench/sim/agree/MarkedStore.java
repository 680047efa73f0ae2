package org.gaugebench.sim.agree;

import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.random.SplitMix64;

/**
 * A memory that keeps a mark of each request, each answer and each byte of both. Equal marks of two
 * memories of one make and seed mean equal images: what a write leaves is a function of what was
 * asked before, power cuts included.
 */
final class MarkedStore implements StateStore {
    private static final byte[] NO_BYTES = {};

    private final StateStore memory;
    private long mark;

    MarkedStore(StateStore memory) {
        this.memory = memory;
    }

    /** Of all that was asked so far and what was answered. */
    long mark() {
        return mark;
    }

    @Override
    public int slots() {
        return memory.slots();
    }

    @Override
    public int slotBytes() {
        return memory.slotBytes();
    }

    @Override
    public int read(int slot, byte[] destination) {
        fold(1, slot, NO_BYTES);
        int answer = memory.read(slot, destination);
        fold(answer, slot, answer == OK ? destination : NO_BYTES);
        return answer;
    }

    @Override
    public int erase(int slot) {
        fold(2, slot, NO_BYTES);
        int answer = memory.erase(slot);
        fold(answer, slot, NO_BYTES);
        return answer;
    }

    @Override
    public int program(int slot, byte[] source) {
        // Before the call: power may go in it.
        fold(3, slot, source);
        int answer = memory.program(slot, source);
        fold(answer, slot, NO_BYTES);
        return answer;
    }

    private void fold(int what, int slot, byte[] bytes) {
        mark = SplitMix64.mix(mark ^ (16L * slot + what + 8));
        mark = SplitMix64.mix(mark ^ bytes.length);
        for (byte each : bytes) {
            mark = SplitMix64.mix(mark ^ (each + 1_000));
        }
    }
}
