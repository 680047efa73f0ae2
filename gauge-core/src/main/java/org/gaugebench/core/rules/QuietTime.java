package org.gaugebench.core.rules;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * The time after a restart, an adjustment or a change of settings in which figures still settle and
 * no rule decides (rules F14, E7, R8 of {@code docs/rules.md}). One for each rule, as each passes
 * its minutes itself.
 */
final class QuietTime {
    // Parameters.
    private final int wholeMinutes;

    // State.
    private int leftMinutes;

    QuietTime(GaugeSettings settings) {
        wholeMinutes = (int) settings.get(Setting.QUIET_TIME);
    }

    /** Begins anew, however much was left. */
    void begin() {
        leftMinutes = wholeMinutes;
    }

    /**
     * Lets a minute pass.
     *
     * @return whether that minute belonged to the quiet time
     */
    boolean passMinute() {
        boolean quiet = leftMinutes > 0;
        if (quiet) {
            leftMinutes--;
        }
        return quiet;
    }
}
