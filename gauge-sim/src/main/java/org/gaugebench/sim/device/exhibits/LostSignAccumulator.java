package org.gaugebench.sim.device.exhibits;

/**
 * The value of the last set and the net charge since. When the current turns to charging, the net
 * charge passes through a function for magnitudes.
 */
final class LostSignAccumulator implements Accumulator {
    private long setCountMillis;
    private long netCountMillis;
    private boolean charging;

    @Override
    public void add(long addend) {
        if (addend > 0 && !charging) {
            netCountMillis = Math.abs(netCountMillis);
        }
        if (addend != 0) {
            charging = addend > 0;
        }
        netCountMillis += addend;
    }

    @Override
    public void set(long value) {
        setCountMillis = value;
        netCountMillis = 0;
    }

    @Override
    public long countMillis() {
        return setCountMillis + netCountMillis;
    }
}
