package org.gaugebench.sim.frontend;

/** A first-order lag: x' = (target - x) / T, stepped exactly for a target that stands still. */
final class Lag {
    private double timeConstantSeconds = 1;
    private double value;
    private double lastSeconds = -1;
    private double kept;

    void setTimeConstant(double seconds) {
        timeConstantSeconds = seconds;
        lastSeconds = -1;
    }

    void step(double target, double seconds) {
        if (seconds != lastSeconds) {
            lastSeconds = seconds;
            kept = StrictMath.exp(-seconds / timeConstantSeconds);
        }
        value = target + (value - target) * kept;
    }

    double value() {
        return value;
    }
}
