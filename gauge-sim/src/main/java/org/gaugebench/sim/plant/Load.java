package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.LoadSpec;

/**
 * One load, steady or cycling. A cycle begins with its on part at the moment the load is switched
 * on (the start of the run for a load that is on then).
 */
final class Load {
    private final LoadSpec spec;
    private long amount;
    private boolean switchedOn;
    private long cycleStartMillis;

    Load(LoadSpec spec) {
        this.spec = spec;
        amount = spec.amount();
        switchedOn = spec.switchedOn();
    }

    /** Takes over the state of another load of the same spec. */
    void adopt(Load other) {
        amount = other.amount;
        switchedOn = other.switchedOn;
        cycleStartMillis = other.cycleStartMillis;
    }

    String name() {
        return spec.name();
    }

    LoadSpec.Kind kind() {
        return spec.kind();
    }

    void setAmount(long value) {
        amount = value;
    }

    void switchTo(boolean on, long nowMillis) {
        if (on && !switchedOn) {
            cycleStartMillis = nowMillis;
        }
        switchedOn = on;
    }

    boolean isCycling() {
        return switchedOn && spec.periodMillis() > 0;
    }

    /** Amps, watts or siemens by kind while the load is on. */
    double size() {
        return spec.kind() == LoadSpec.Kind.CONSTANT_RESISTANCE ? 1 / (amount / 1e6) : amount / 1e6;
    }

    /** Part that is on at an instant: 0 or 1. The on part holds its first instant, not its last. */
    double at(long millis) {
        if (!isCycling()) {
            return switchedOn ? 1 : 0;
        }
        return (millis - cycleStartMillis) % spec.periodMillis() < spec.onMillis() ? 1 : 0;
    }

    /** Mean part that is on from one instant to a later one. */
    double meanOver(long fromMillis, long toMillis) {
        if (!isCycling()) {
            return switchedOn ? 1 : 0;
        }
        return (onMillisUntil(toMillis) - onMillisUntil(fromMillis))
                / (double) (toMillis - fromMillis);
    }

    private long onMillisUntil(long millis) {
        long elapsed = millis - cycleStartMillis;
        return elapsed / spec.periodMillis() * spec.onMillis()
                + Math.min(elapsed % spec.periodMillis(), spec.onMillis());
    }

    /** First instant after the given one at which the load goes on or off by itself. */
    long nextChangeMillis(long afterMillis) {
        if (!isCycling()) {
            return Long.MAX_VALUE;
        }
        long phase = (afterMillis - cycleStartMillis) % spec.periodMillis();
        long next = phase < spec.onMillis() ? spec.onMillis() : spec.periodMillis();
        return afterMillis - phase + next;
    }
}
