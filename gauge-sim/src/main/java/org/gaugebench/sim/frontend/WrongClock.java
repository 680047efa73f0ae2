package org.gaugebench.sim.frontend;

import org.gaugebench.sim.random.SplitMix64;

/** A millisecond counter that runs fast or slow, trembles, stands still or jumps. */
final class WrongClock {
    private final SplitMix64 random;

    // Parameters.
    private double rate = 1;
    private long jitterMillis;
    private boolean running = true;

    // State.
    private double shownMillis;
    private long lastTrueMillis;

    /** A counter that shows this at that time. */
    WrongClock(long seed, long shownMillis, long trueMillis) {
        random = new SplitMix64(seed);
        restart(shownMillis, trueMillis);
    }

    void restart(long showsMillis, long trueMillis) {
        shownMillis = showsMillis;
        lastTrueMillis = trueMillis;
    }

    void setErrorPartsPerMillion(long partsPerMillion) {
        rate = 1 + partsPerMillion / 1e6;
    }

    void setJitterMillis(long millis) {
        jitterMillis = millis;
    }

    void setRunning(boolean runs) {
        running = runs;
    }

    void jump(long millis) {
        shownMillis += millis;
    }

    /** What it shows; wraps at 2^32. */
    int read(long trueMillis) {
        if (running) {
            shownMillis += (trueMillis - lastTrueMillis) * rate;
        }
        lastTrueMillis = trueMillis;
        double off = jitterMillis == 0 ? 0 : (2 * random.nextDouble() - 1) * jitterMillis;
        return (int) (long) Math.floor(shownMillis + off);
    }
}
