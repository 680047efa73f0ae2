package org.gaugebench.sim.random;

/**
 * The SplitMix64 generator of Steele, Lea and Flood, "Fast splittable pseudorandom number
 * generators", OOPSLA 2014. Written out here because the JDK promises no fixed sequence for its own
 * class across versions.
 */
public final class SplitMix64 {
    private static final long GAMMA = 0x9E3779B97F4A7C15L;
    private static final double TWO_TO_MINUS_53 = 0x1.0p-53;

    private long state;

    /** Starts a sequence. */
    public SplitMix64(long seed) {
        state = seed;
    }

    /** A generator that will go on with the same sequence. */
    public SplitMix64 copy() {
        return new SplitMix64(state);
    }

    /** The next 64 bits. */
    public long nextLong() {
        state += GAMMA;
        return mix(state);
    }

    /** The next double of 53 bits, 0 inclusive to 1 exclusive. */
    public double nextDouble() {
        return (nextLong() >>> 11) * TWO_TO_MINUS_53;
    }

    /** The finaliser: a bijection that scatters every input bit. */
    public static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
