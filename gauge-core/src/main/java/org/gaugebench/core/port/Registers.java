package org.gaugebench.core.port;

/**
 * One long for each {@link Register}. The caller owns one object; {@code Gauge.inspect} fills it.
 */
public final class Registers {
    /** Number of registers. */
    public static final int COUNT = Register.values().length;

    /** Where a digest begins: the offset basis of the 64-bit FNV hash. */
    public static final long DIGEST_START = 0xCBF29CE484222325L;

    private static final long DIGEST_PRIME = 0x100000001B3L;

    private final long[] values = new long[COUNT];

    /** Creates a table of zeros, for reuse. */
    public Registers() {}

    /**
     * Reads one register.
     *
     * @param register which
     * @return its value, in {@link Register#unit()}
     */
    public long get(Register register) {
        return values[register.ordinal()];
    }

    /**
     * Writes one register.
     *
     * @param register which
     * @param value its value, in {@link Register#unit()}
     */
    public void set(Register register, long value) {
        values[register.ordinal()] = value;
    }

    /**
     * Folds all registers, in table order, into a running digest: {@code d = (rotl(d, 23) ^ value)
     * x prime} for each, with the 64-bit FNV prime. Two gauges fed alike must agree.
     *
     * <p><b>Range:</b> wraps modulo 2^64 on purpose.
     *
     * @param digest {@link #DIGEST_START}, or the result of the fold before
     * @return the new digest
     */
    public long fold(long digest) {
        long folded = digest;
        for (int i = 0; i < COUNT; i++) {
            folded = (Long.rotateLeft(folded, 23) ^ values[i]) * DIGEST_PRIME;
        }
        return folded;
    }
}
