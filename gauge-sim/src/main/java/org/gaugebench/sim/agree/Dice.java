package org.gaugebench.sim.agree;

import org.gaugebench.sim.random.SplitMix64;

/** Whole numbers by chance, the same for the same seed on every machine. */
final class Dice {
    private final SplitMix64 random;

    Dice(long seed) {
        random = new SplitMix64(seed);
    }

    /** From low to high, both included. */
    long between(long low, long high) {
        long span = high - low + 1;
        // As an unsigned number it is too large only for all that 64 bits hold.
        return span == 0
                ? random.nextLong()
                : low + Long.remainderUnsigned(random.nextLong(), span);
    }

    int between(int low, int high) {
        return (int) between((long) low, (long) high);
    }

    /** Once in so many times. */
    boolean once(int in) {
        return between(1, in) == 1;
    }

    /** One of several. */
    <T> T of(T[] all) {
        return all[between(0, all.length - 1)];
    }

    int of(int... all) {
        return all[between(0, all.length - 1)];
    }

    /** Mostly small, now and then large: as many bits as chance has it. */
    long ofAnySize(long high) {
        long bits = between(0, 64 - Long.numberOfLeadingZeros(high));
        return Math.min(high, bits == 0 ? 0 : between(0, (1L << Math.min(bits, 62)) - 1));
    }
}
