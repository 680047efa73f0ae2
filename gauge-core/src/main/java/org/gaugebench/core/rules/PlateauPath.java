package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.RuleReason;

/**
 * A tired lead-acid battery's way to full (rule F10): its current stops falling above the taper.
 *
 * <p>Four things together, without any forgiveness: the voltage is held flat, the count stands at
 * its limit, the current is under four tapers, and it has stood still within a twentieth for the
 * plateau hold. A battery that still fills at this voltage lets its current fall by a third in that
 * hour (time constant of two hours, from memory).
 */
final class PlateauPath {
    private static final int PLATEAU_TAPER_TIMES = 4;
    private static final int STEADY_PERCENT = 5;

    // Parameters.
    private final FullChargeLimits limits;

    // State.
    private final SteadyWatch current = new SteadyWatch();
    private final SteadyWatch voltage = new SteadyWatch();

    PlateauPath(FullChargeLimits limits) {
        this.limits = limits;
    }

    /** Takes one minute and answers whether a plateau may be under way. */
    boolean judge(MinuteMean minute, RuleReason obstacle, boolean atLimit) {
        long mean = minute.meanMicroamps();
        boolean runs =
                limits.plateauMinutes > 0
                        && atLimit
                        && obstacle == RuleReason.CURRENT_ABOVE_TAPER
                        && mean < PLATEAU_TAPER_TIMES * limits.taperMicroamps;
        if (!runs) {
            reset();
            return false;
        }
        current.addMinute(mean, mean * STEADY_PERCENT / 100);
        if (limits.flatnessMicrovolts > 0) {
            voltage.addMinute(minute.meanMicrovolts(), limits.flatnessMicrovolts);
        }
        return true;
    }

    boolean isProven() {
        boolean flat = limits.flatnessMicrovolts == 0 || voltage.minutes() >= limits.plateauMinutes;
        return flat && current.minutes() >= limits.plateauMinutes;
    }

    void reset() {
        current.reset();
        voltage.reset();
    }
}
