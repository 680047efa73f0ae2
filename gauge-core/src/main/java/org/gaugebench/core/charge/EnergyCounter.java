package org.gaugebench.core.charge;

/**
 * Energy through the battery, in and out apart.
 *
 * <p>Millivolts times microamps times milliseconds are picojoules, exactly; whole microjoules are
 * moved to the total when the small sum grows, so that no tick divides.
 */
public final class EnergyCounter {
    private static final long PICOJOULES_PER_MICROJOULE = 1_000_000;
    private static final long FOLD_ABOVE_PICOJOULES = 500_000_000_000_000_000L;

    // State.
    private long inMicrojoules;
    private long outMicrojoules;
    private long inPicojoules;
    private long outPicojoules;

    /** Creates counters at zero. */
    public EnergyCounter() {}

    /**
     * Adds a stretch of constant current and voltage.
     *
     * <p><b>Range:</b> 100,000 mV x 2^31 uA x 65,535 ms would be 1.4e19 pJ, above 2^63; the stretch
     * is at most one minute and voltage times current at most 6.5e4 mV x 2.1e9 uA = 1.4e14, so the
     * step is at most 8.4e18 less the fold limit of 5e17. Above 65.5 V the millivolts are clamped.
     * Totals in microjoules last 290,000 years at 1 kW.
     *
     * @param millivolts 0 to 65,535; clamped
     * @param currentMicroamps positive into the battery
     * @param millis at most 60,000
     */
    public void add(int millivolts, int currentMicroamps, int millis) {
        long picojoules = (long) Math.min(millivolts, 65_535) * currentMicroamps * millis;
        if (picojoules > 0) {
            inPicojoules += picojoules;
            if (inPicojoules > FOLD_ABOVE_PICOJOULES) {
                inMicrojoules += inPicojoules / PICOJOULES_PER_MICROJOULE;
                inPicojoules %= PICOJOULES_PER_MICROJOULE;
            }
        } else {
            outPicojoules -= picojoules;
            if (outPicojoules > FOLD_ABOVE_PICOJOULES) {
                outMicrojoules += outPicojoules / PICOJOULES_PER_MICROJOULE;
                outPicojoules %= PICOJOULES_PER_MICROJOULE;
            }
        }
    }

    /**
     * Energy into the battery since power-up.
     *
     * @return whole microjoules (3.6e9 to the watt-hour)
     */
    public long inMicrojoules() {
        return inMicrojoules + inPicojoules / PICOJOULES_PER_MICROJOULE;
    }

    /**
     * Energy out of the battery since power-up, a positive figure.
     *
     * @return whole microjoules
     */
    public long outMicrojoules() {
        return outMicrojoules + outPicojoules / PICOJOULES_PER_MICROJOULE;
    }
}
