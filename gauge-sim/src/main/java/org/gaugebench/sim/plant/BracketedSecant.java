package org.gaugebench.sim.plant;

/**
 * Illinois search for the root of a falling function: a secant between two ends that keep the root
 * between them, the weight of an end that stands still halved each time. Ends at a width of 1e-12
 * or at its count of steps, both the same on any machine. One object serves every search, so that
 * none is made each tick.
 */
final class BracketedSecant {
    private static final int MOST_STEPS = 100;
    private static final double WIDTH = 1e-12;

    private double low;
    private double high;
    private double excessLow;
    private double excessHigh;
    private double at;
    private int stepsLeft;

    /** Begins between two ends: nothing is searched where the function does not fall below zero. */
    void begin(double newLow, double newExcessLow, double newHigh, double newExcessHigh) {
        low = newLow;
        excessLow = newExcessLow;
        high = newHigh;
        excessHigh = newExcessHigh;
        at = high;
        stepsLeft = MOST_STEPS;
    }

    /** Whether {@link #at()} is a new place whose value {@link #take} wants. */
    boolean next() {
        if (stepsLeft == 0 || high - low <= WIDTH || excessHigh >= 0) {
            return false;
        }
        stepsLeft--;
        at = (low * excessHigh - high * excessLow) / (excessHigh - excessLow);
        return true;
    }

    /** The best place so far. */
    double at() {
        return at;
    }

    /** Takes the function's value there. */
    void take(double excess) {
        if (excess > 0) {
            low = at;
            excessLow = excess;
            excessHigh /= 2;
        } else if (excess < 0) {
            high = at;
            excessHigh = excess;
            excessLow /= 2;
        } else {
            stepsLeft = 0;
        }
    }
}
