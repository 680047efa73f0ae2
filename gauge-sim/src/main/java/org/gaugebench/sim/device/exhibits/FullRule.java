package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;

/**
 * When a gauge with a simple rule believes that the battery is full: voltage and current within
 * their limits in every single sample for a time. There is no average, no temperature and no look
 * at what the battery did before; that is the mistake.
 */
final class FullRule {
    /** 13.5 V of float give 13.23 V; a rule that also serves weak chargers goes that low. */
    private static final double PART_OF_FLOAT = 0.98;

    /** Where the settings have no float voltage: 14.4 V give 13.25 V. */
    private static final double PART_OF_ABSORPTION = 0.92;

    private static final double LOOSE_TAPER = 0.04;
    private static final long LOOSE_HOLD_MILLIS = 180_000;
    private static final FullRule NEVER =
            new FullRule(Double.POSITIVE_INFINITY, 0, 0, Long.MAX_VALUE);

    private final double thresholdMicrovolts;
    private final double lowestMicroamps;
    private final double highestMicroamps;
    private final long holdMillis;
    private long heldMillis;

    private FullRule(
            double thresholdMicrovolts,
            double lowestMicroamps,
            double highestMicroamps,
            long holdMillis) {
        this.thresholdMicrovolts = thresholdMicrovolts;
        this.lowestMicroamps = lowestMicroamps;
        this.highestMicroamps = highestMicroamps;
        this.holdMillis = holdMillis;
    }

    /** The rule of a set of mistakes; an absorption voltage of 0 switches every rule off. */
    static FullRule of(Set<Mistake> mistakes, GaugeSettings settings) {
        double absorption = settings.get(Setting.ABSORPTION) * 1e3;
        if (absorption == 0) {
            return NEVER;
        }
        double threshold = absorption - settings.get(Setting.ABSORPTION_MARGIN) * 1e3;
        double perHourMicroamps = settings.get(Setting.CAPACITY) * 1e3;
        if (mistakes.contains(Mistake.LOOSE_FULL_RULE)) {
            double floating = settings.get(Setting.FLOAT_VOLTAGE) * 1e3;
            double low = floating > 0 ? floating * PART_OF_FLOAT : absorption * PART_OF_ABSORPTION;
            return new FullRule(low, 0, perHourMicroamps * LOOSE_TAPER, LOOSE_HOLD_MILLIS);
        }
        if (mistakes.contains(Mistake.STRICT_FULL_RULE)) {
            double taper = perHourMicroamps * settings.get(Setting.TAPER) / 1e6;
            long hold = settings.get(Setting.HOLD) * 60_000;
            return new FullRule(threshold, Double.MIN_VALUE, taper, hold);
        }
        if (mistakes.contains(Mistake.FULL_BY_VOLTAGE_ONLY)) {
            return new FullRule(threshold, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, 0);
        }
        return NEVER;
    }

    /** Takes a sample and tells whether it says full. */
    boolean says(int microvolts, double microamps, long millis) {
        boolean within =
                microvolts >= thresholdMicrovolts
                        && microamps >= lowestMicroamps
                        && microamps <= highestMicroamps;
        heldMillis = within ? heldMillis + millis : 0;
        return within && heldMillis >= holdMillis;
    }

    /** Begins again. */
    void restart() {
        heldMillis = 0;
    }
}
