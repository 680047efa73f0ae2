package org.gaugebench.core.charge;

/**
 * Energy through the battery, in and out apart.
 *
 * <p>Millivolts times microamps times milliseconds are picojoules, exactly; whole microjoules are
 * moved to the total when the small sum grows, so that no tick divides.
 */
public final class EnergyCounter {
    private static final long PICOJOULES_PER_MICROJOULE = 1_000_000;
    private static final int LONGEST_PRODUCT_MILLIS = 30_000;
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
     * <p><b>Range:</b> 100,000 mV x 2^31 uA x 60,000 ms would be 1.3e19 pJ, above 2^63, so a
     * stretch above 30,000 ms is taken as two: 6.44e18 at most, and 5e17 from the stretches before.
     * The totals in microjoules reach 2^63 after 292 years at 1 kW (497 days at 100 V and 2147 A)
     * and saturate.
     *
     * @param millivolts 0 to 100,000
     * @param currentMicroamps positive into the battery, not below -(2^31-1)
     * @param millis at most 60,000
     */
    public void add(int millivolts, int currentMicroamps, int millis) {
        long picojoulesPerMilli = (long) millivolts * currentMicroamps;
        int restMillis = millis;
        if (millis > LONGEST_PRODUCT_MILLIS) {
            addPicojoules(picojoulesPerMilli * LONGEST_PRODUCT_MILLIS);
            restMillis -= LONGEST_PRODUCT_MILLIS;
        }
        addPicojoules(picojoulesPerMilli * restMillis);
    }

    private void addPicojoules(long picojoules) {
        if (picojoules > 0) {
            inPicojoules += picojoules;
            if (inPicojoules > FOLD_ABOVE_PICOJOULES) {
                inMicrojoules = total(inMicrojoules, inPicojoules);
                inPicojoules %= PICOJOULES_PER_MICROJOULE;
            }
        } else {
            outPicojoules -= picojoules;
            if (outPicojoules > FOLD_ABOVE_PICOJOULES) {
                outMicrojoules = total(outMicrojoules, outPicojoules);
                outPicojoules %= PICOJOULES_PER_MICROJOULE;
            }
        }
    }

    private static long total(long microjoules, long picojoules) {
        long sum = microjoules + picojoules / PICOJOULES_PER_MICROJOULE;
        return sum < 0 ? Long.MAX_VALUE : sum;
    }

    /**
     * Takes over totals that were saved.
     *
     * @param savedInMicrojoules energy in
     * @param savedOutMicrojoules energy out
     */
    public void resume(long savedInMicrojoules, long savedOutMicrojoules) {
        inMicrojoules = Math.max(savedInMicrojoules, 0);
        outMicrojoules = Math.max(savedOutMicrojoules, 0);
        inPicojoules = 0;
        outPicojoules = 0;
    }

    /**
     * Energy into the battery since power-up.
     *
     * @return whole microjoules (3.6e9 to the watt-hour)
     */
    public long inMicrojoules() {
        return total(inMicrojoules, inPicojoules);
    }

    /**
     * Energy out of the battery since power-up, a positive figure.
     *
     * @return whole microjoules
     */
    public long outMicrojoules() {
        return total(outMicrojoules, outPicojoules);
    }
}
