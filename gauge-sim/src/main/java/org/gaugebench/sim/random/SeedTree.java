package org.gaugebench.sim.random;

/**
 * Derives an independent seed for every named stream from one run seed, so that adding a stream
 * shifts no other.
 *
 * <p>The name is folded with the 64-bit FNV-1a hash of its UTF-16 units, mixed with the seed by the
 * SplitMix64 finaliser.
 */
public final class SeedTree {
    private static final long FNV_OFFSET_BASIS = 0xCBF29CE484222325L;
    private static final long FNV_PRIME = 0x100000001B3L;

    private final long seed;

    /** Roots a tree. */
    public SeedTree(long seed) {
        this.seed = seed;
    }

    /** The seed of the stream of that name, such as "front-end/gauge/shunt-noise". */
    public long seedOf(String name) {
        long hash = FNV_OFFSET_BASIS;
        for (int i = 0; i < name.length(); i++) {
            hash = (hash ^ name.charAt(i)) * FNV_PRIME;
        }
        return SplitMix64.mix(SplitMix64.mix(seed) ^ hash);
    }
}
