package org.gaugebench.sim.device.exhibits;

/** Whole milliampere-hours: each tick is divided down to them and its remainder is dropped. */
final class TruncatingAccumulator implements Accumulator {
    private final CountScale scale;
    private long milliampHours;

    TruncatingAccumulator(CountScale scale) {
        this.scale = scale;
    }

    @Override
    public void add(long addend) {
        // The cast rounds towards zero, as an integer division does.
        milliampHours +=
                (long) (scale.nanocoulombs(addend) / CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR);
    }

    @Override
    public void set(long value) {
        milliampHours =
                StrictMath.round(
                        scale.nanocoulombs(value) / CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR);
    }

    @Override
    public long countMillis() {
        return scale.countMillis(milliampHours * CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR);
    }
}
