package org.gaugebench.core.readout;

/**
 * A current for a display, in tenths of an ampere. What is below the smallest current to be shown
 * reads zero on the display only; the count takes it as it is.
 *
 * <p>The sign belongs to the rounded figure: whoever prints it gets no minus before a zero.
 */
public final class ShownCurrent {
    private static final int TENTH_MICROAMPS = 100_000;

    // Parameters.
    private final long zeroBelowMicroamps;

    /**
     * Declares the smallest current to be shown.
     *
     * @param zeroBelowMicroamps below it the display reads zero; 0 shows every tenth
     */
    public ShownCurrent(long zeroBelowMicroamps) {
        this.zeroBelowMicroamps = zeroBelowMicroamps;
    }

    /**
     * Rounds for the display, halves away from zero.
     *
     * <p><b>Range:</b> any current, worked out in 64 bits; -21,475 to 21,475.
     *
     * @param currentMicroamps positive into the battery
     * @return tenths of an ampere
     */
    public int tenthsOfAmp(int currentMicroamps) {
        long magnitude = Math.abs((long) currentMicroamps);
        if (magnitude < zeroBelowMicroamps) {
            return 0;
        }
        int tenths = (int) ((magnitude + TENTH_MICROAMPS / 2) / TENTH_MICROAMPS);
        return currentMicroamps < 0 ? -tenths : tenths;
    }
}
