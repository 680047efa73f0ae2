package org.gaugebench.sim.device.exhibits;

/** Ampere-seconds in a 32-bit float: a small addend beside a large sum vanishes in rounding. */
final class FloatAccumulator implements Accumulator {
    private final CountScale scale;
    private float ampSeconds;

    FloatAccumulator(CountScale scale) {
        this.scale = scale;
    }

    private float ampSecondsOf(long countMillis) {
        return (float) (scale.nanocoulombs(countMillis) / CountScale.NANOCOULOMBS_PER_AMP_SECOND);
    }

    @Override
    public void add(long addend) {
        ampSeconds += ampSecondsOf(addend);
    }

    @Override
    public void set(long value) {
        ampSeconds = ampSecondsOf(value);
    }

    @Override
    public long countMillis() {
        return scale.countMillis(ampSeconds * CountScale.NANOCOULOMBS_PER_AMP_SECOND);
    }
}
