package org.gaugebench.sim.logs;

import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * What the file itself does not say.
 *
 * @param columns which columns mean what
 * @param positiveIsCharge whether a positive current flows into the battery
 * @param currentUnit unit of the current column; null where the user did not say
 * @param zone time zone of date-times without an offset; null where the user did not say
 */
public record LogOptions(
        LogColumns columns,
        boolean positiveIsCharge,
        @Nullable CurrentUnit currentUnit,
        @Nullable ZoneId zone) {

    /** Unit of a current column. */
    public enum CurrentUnit {
        /** Amps. */
        A(1),
        /** Milliamps. */
        MA(1000);

        private final int perAmp;

        CurrentUnit(int perAmp) {
            this.perAmp = perAmp;
        }

        /** How many of this unit make an amp; dividing by it is rounded once, correctly. */
        public int perAmp() {
            return perAmp;
        }
    }
}
