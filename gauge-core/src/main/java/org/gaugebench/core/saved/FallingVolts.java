package org.gaugebench.core.saved;

/**
 * Remembers the highest voltage of the last ten seconds, in whole seconds, to tell a fast fall from
 * a slow one. Samples further apart than the window tell nothing.
 */
public final class FallingVolts {
    private static final int WINDOW_SECONDS = 10;
    private static final int MILLIS_PER_SECOND = 1_000;

    // Parameters.
    private final int fallMicrovolts;

    // State.
    private final int[] highestMicrovolts = new int[WINDOW_SECONDS];
    private int secondCount;
    private int secondMillis;

    /**
     * Makes an empty window.
     *
     * @param fallMicrovolts the fall that counts as fast, above 0
     */
    public FallingVolts(int fallMicrovolts) {
        this.fallMicrovolts = fallMicrovolts;
        forget();
    }

    /** Empties the window. */
    public void forget() {
        for (int i = 0; i < WINDOW_SECONDS; i++) {
            highestMicrovolts[i] = Integer.MIN_VALUE;
        }
        secondCount = 0;
        secondMillis = 0;
    }

    /**
     * Takes one sample.
     *
     * <p><b>Range:</b> the difference of two 32-bit voltages is formed in 64 bits; an empty second
     * stands at -2^31 and can only make the fall smaller.
     *
     * @param microvolts battery voltage
     * @param elapsedMillis since the sample before, 0 to 65,535
     * @return whether the voltage lies a fast fall or more under the highest of the window
     */
    public boolean add(int microvolts, int elapsedMillis) {
        secondMillis += elapsedMillis;
        int steps = Math.min(secondMillis / MILLIS_PER_SECOND, WINDOW_SECONDS);
        secondMillis %= MILLIS_PER_SECOND;
        for (int i = 0; i < steps; i++) {
            secondCount = (secondCount + 1) % WINDOW_SECONDS;
            highestMicrovolts[secondCount] = Integer.MIN_VALUE;
        }
        highestMicrovolts[secondCount] = Math.max(highestMicrovolts[secondCount], microvolts);
        int highest = Integer.MIN_VALUE;
        for (int i = 0; i < WINDOW_SECONDS; i++) {
            highest = Math.max(highest, highestMicrovolts[i]);
        }
        return (long) highest - microvolts > fallMicrovolts;
    }
}
