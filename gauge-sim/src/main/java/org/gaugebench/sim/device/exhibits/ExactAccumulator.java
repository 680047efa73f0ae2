package org.gaugebench.sim.device.exhibits;

/** 64 bits of whole count-milliseconds: nothing is lost. */
final class ExactAccumulator implements Accumulator {
    private long countMillis;

    @Override
    public void add(long addend) {
        countMillis += addend;
    }

    @Override
    public void set(long value) {
        countMillis = value;
    }

    @Override
    public long countMillis() {
        return countMillis;
    }
}
