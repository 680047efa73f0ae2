package org.gaugebench.sim.device.exhibits;

/**
 * Milliampere-seconds in a 32-bit integer. The sum is kept exactly and narrowed where it is read,
 * which gives what a 32-bit sum with a carried remainder gives: both are the sum modulo 2^32.
 */
final class WrappingAccumulator implements Accumulator {
    private final CountScale scale;
    private long exactCountMillis;

    WrappingAccumulator(CountScale scale) {
        this.scale = scale;
    }

    @Override
    public void add(long addend) {
        exactCountMillis += addend;
    }

    @Override
    public void set(long value) {
        exactCountMillis = value;
    }

    @Override
    public long countMillis() {
        long whole =
                StrictMath.round(
                        scale.nanocoulombs(exactCountMillis)
                                / CountScale.NANOCOULOMBS_PER_MILLIAMP_SECOND);
        int narrowed = (int) whole;
        return narrowed == whole
                ? exactCountMillis
                : scale.countMillis(narrowed * CountScale.NANOCOULOMBS_PER_MILLIAMP_SECOND);
    }
}
