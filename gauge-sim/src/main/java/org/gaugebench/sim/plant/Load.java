package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.ProfileSpec;

/**
 * One load, steady or cycling, with a shape within its on part. A cycle begins with its on part at
 * the moment the load is switched on (the start of the run for a load that is on then), or as long
 * after it as the load is told to wait.
 */
final class Load {
    private static final long OFF = -1;

    private final LoadSpec spec;
    private final Shape shape;
    private final boolean follows;
    private long amount;
    private boolean switchedOn;
    private long startMillis;

    Load(LoadSpec spec) {
        this.spec = spec;
        ProfileSpec profile = spec.traits().profile();
        follows = profile != null;
        shape = profile == null ? Shape.of(spec.traits().shape()) : Shape.of(profile);
        amount = spec.amount();
        switchedOn = spec.switchedOn();
        startMillis = spec.traits().startsAfterMillis();
    }

    /** Takes over the state of another load of the same spec. */
    void adopt(Load other) {
        amount = other.amount;
        switchedOn = other.switchedOn;
        startMillis = other.startMillis;
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
        // A profile goes on while its load is off: its times are those of the run.
        if (on && !switchedOn && !follows) {
            startMillis = nowMillis + spec.traits().startsAfterMillis();
        }
        switchedOn = on;
    }

    /** Whether what it draws at an instant may differ from its mean over a step. */
    boolean isVarying() {
        return switchedOn && (spec.periodMillis() > 0 || shape.isVarying());
    }

    /** Amps, watts or siemens by kind while the load is on. */
    double size() {
        return spec.kind() == LoadSpec.Kind.CONSTANT_RESISTANCE ? 1 / (amount / 1e6) : amount / 1e6;
    }

    /**
     * Part of its size that it draws at an instant. The on part holds its first instant, not its
     * last.
     */
    double at(long millis) {
        long since = sinceOn(millis);
        return since == OFF ? 0 : shape.at(since);
    }

    private long sinceOn(long millis) {
        long elapsed = millis - startMillis;
        if (!switchedOn || elapsed < 0) {
            return OFF;
        }
        if (spec.periodMillis() == 0) {
            return elapsed;
        }
        long phase = elapsed % spec.periodMillis();
        return phase < spec.onMillis() ? phase : OFF;
    }

    /** Exact mean part of its size that it draws from one instant to a later one. */
    double meanOver(long fromMillis, long toMillis) {
        if (!switchedOn || toMillis <= startMillis) {
            return 0;
        }
        long from = Math.max(fromMillis, startMillis) - startMillis;
        long to = toMillis - startMillis;
        double sum = spec.periodMillis() == 0 ? shape.integral(from, to) : overCycles(from, to);
        return sum / (toMillis - fromMillis);
    }

    private double overCycles(long from, long to) {
        long on = spec.onMillis();
        long period = spec.periodMillis();
        long first = Math.min(from % period, on);
        long last = Math.min(to % period, on);
        long cycles = to / period - from / period;
        if (cycles == 0) {
            return shape.integral(first, last);
        }
        double whole = cycles > 1 ? (cycles - 1) * shape.integral(0, on) : 0;
        return shape.integral(first, on) + whole + shape.integral(0, last);
    }

    /** First instant at or after the given one from which its mean over a step changes. */
    long nextChangeMillis(long atMillis) {
        if (!switchedOn) {
            return Long.MAX_VALUE;
        }
        if (atMillis < startMillis) {
            return startMillis;
        }
        long since = sinceOn(atMillis);
        long moves = since == OFF ? Long.MAX_VALUE : shape.nextChange(since);
        if (moves < Long.MAX_VALUE) {
            return atMillis + (moves - since);
        }
        if (spec.periodMillis() == 0) {
            return Long.MAX_VALUE;
        }
        long phase = (atMillis - startMillis) % spec.periodMillis();
        long next = phase < spec.onMillis() ? spec.onMillis() : spec.periodMillis();
        return atMillis - phase + next;
    }
}
