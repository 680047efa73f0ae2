package org.gaugebench.sim.frontend;

/**
 * Samples that come more seldom than ticks: one each interval, of what was there while the
 * converter was awake.
 */
final class SampleTimer {
    private final boolean integrating;

    // Parameters.
    private long intervalMillis;
    private long awakeMillis;
    private long phaseMillis;

    // State.
    private long dueMillis;
    private long lastMillis;
    private double voltMillis;
    private long takenMillis;
    private double volts;

    SampleTimer(boolean integrating) {
        this.integrating = integrating;
    }

    /** Takes other times; the next sample is due at the next multiple of the interval. */
    void configure(long interval, long awake, long phase, long nowMillis) {
        intervalMillis = Math.max(interval, 1);
        awakeMillis = awake == 0 ? intervalMillis : awake;
        phaseMillis = phase;
        dueMillis = phaseMillis + ceilingOf(nowMillis - phaseMillis) * intervalMillis;
        lastMillis = nowMillis;
        voltMillis = 0;
        takenMillis = 0;
    }

    private long ceilingOf(long millis) {
        return -Math.floorDiv(-millis, intervalMillis);
    }

    /**
     * Takes what stood at the input over the last tick.
     *
     * @return whether a sample is due
     */
    boolean take(double inputVolts, long nowMillis) {
        long passed = nowMillis - lastMillis;
        lastMillis = nowMillis;
        if (nowMillis > dueMillis - awakeMillis) {
            voltMillis += inputVolts * passed;
            takenMillis += passed;
        }
        if (nowMillis < dueMillis) {
            return false;
        }
        dueMillis =
                phaseMillis
                        + (Math.floorDiv(nowMillis - phaseMillis, intervalMillis) + 1)
                                * intervalMillis;
        volts = integrating && takenMillis > 0 ? voltMillis / takenMillis : inputVolts;
        voltMillis = 0;
        takenMillis = 0;
        return true;
    }

    /** The mean while awake, or the instant, of the sample that is due. */
    double volts() {
        return volts;
    }
}
