package org.gaugebench.sim.rig;

/**
 * The textbook rule without any guard: voltage at or over a threshold and current at or under a
 * taper for a hold is full. Sample by sample, again and again; what gauges are taught first.
 */
final class BareRule {
    private final String name;
    private final long thresholdMicrovolts;
    private final long taperMicroamps;
    private final long holdMillis;
    private long heldMillis;
    private final Fulls fulls = new Fulls();

    /** How often a rule set to full, and what was true then. */
    static final class Fulls {
        int times;
        double firstTruePercent = Double.NaN;
        double lowestTruePercent = Double.NaN;
        long firstMillis = -1;

        /** Another time. */
        void add(double truePercent, long atMillis) {
            if (times++ == 0) {
                firstTruePercent = truePercent;
                lowestTruePercent = truePercent;
                firstMillis = atMillis;
            }
            lowestTruePercent = Math.min(lowestTruePercent, truePercent);
        }
    }

    BareRule(String name, long thresholdMicrovolts, long taperMicroamps, long holdMillis) {
        this.name = name;
        this.thresholdMicrovolts = thresholdMicrovolts;
        this.taperMicroamps = taperMicroamps;
        this.holdMillis = holdMillis;
    }

    /** The same rule for a bank of another voltage and capacity. */
    static BareRule of(double volts12, int taperPercent, int minutes, int nominal, int ampHours) {
        return new BareRule(
                "bare " + volts12 + " V, " + taperPercent + " %, " + minutes + " min",
                StrictMath.round(volts12 * 1e6) * nominal / 12,
                ampHours * 10_000L * taperPercent,
                minutes * 60_000L);
    }

    String name() {
        return name;
    }

    Fulls fulls() {
        return fulls;
    }

    void look(long microvolts, long microamps, int millis, double truePercent, long atMillis) {
        boolean speaks = microvolts >= thresholdMicrovolts && microamps <= taperMicroamps;
        heldMillis = speaks ? heldMillis + millis : 0;
        if (heldMillis >= holdMillis) {
            heldMillis = 0;
            fulls.add(truePercent, atMillis);
        }
    }
}
