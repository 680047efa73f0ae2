package org.gaugebench.sim.logs;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What an owner wrote down at one time.
 *
 * @param hours since the first note
 * @param percent shown, 0 to 100 or beyond
 * @param shownAmpHours amp-hours that the gauge shows as left, or null
 * @param chargedAmpHours put in since the note before, by the charger's own display, or null
 * @param volts shown or measured, or null
 * @param word what had happened, or null
 */
public record OwnersNote(
        double hours,
        double percent,
        @Nullable Double shownAmpHours,
        @Nullable Double chargedAmpHours,
        @Nullable Double volts,
        @Nullable Word word) {

    /** What had happened. */
    public enum Word {
        /** The charger had ended by itself: the battery is full. */
        CHARGER_FINISHED,
        /** The lights had gone out: the battery is empty. */
        RAN_FLAT,
        /** The gauge had set itself, or was set by hand, to 100 %. */
        SET_TO_100,
        /** Nothing was on and nothing charged since the note before. */
        NOTHING;

        /** As it stands in a file. */
        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
