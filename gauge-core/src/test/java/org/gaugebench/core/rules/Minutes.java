package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Whole minutes, made to measure. */
final class Minutes {
    static final long AMP_HOUR = 3_600_000_000_000L;
    static final int AMP = 1_000_000;
    static final int DAY = 24 * 60;

    private final MinuteMean minute = new MinuteMean();

    /** A minute that did not move. */
    MinuteMean still(int microvolts, int microamps) {
        return of(microvolts, microvolts, microamps, microamps);
    }

    /** A minute in two halves. */
    MinuteMean of(
            int firstMicrovolts, int secondMicrovolts, int firstMicroamps, int secondMicroamps) {
        minute.add(firstMicroamps, firstMicrovolts, MinuteMean.MINUTE_MILLIS / 2);
        minute.add(secondMicroamps, secondMicrovolts, MinuteMean.MINUTE_MILLIS / 2);
        minute.close();
        return minute;
    }

    /** A minute of which one sample was clipped or implausible. */
    MinuteMean doubtful(int microvolts, int microamps) {
        minute.add(microamps, microvolts, MinuteMean.MINUTE_MILLIS);
        minute.spoil();
        minute.close();
        return minute;
    }

    /** 100 Ah lead-acid with an offset bound of 10 mA, the defaults. */
    static GaugeSettings settings(Object... settingsAndValues) {
        GaugeSettings.Builder builder = GaugeSettings.builder();
        for (int i = 0; i < settingsAndValues.length; i += 2) {
            builder.set(
                    (Setting) settingsAndValues[i],
                    ((Number) settingsAndValues[i + 1]).longValue());
        }
        return builder.build();
    }
}
