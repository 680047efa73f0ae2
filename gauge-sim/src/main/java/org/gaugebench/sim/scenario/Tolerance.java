package org.gaugebench.sim.scenario;

import org.gaugebench.sim.units.RecordUnit;

/**
 * How a quantity of a scenario differs from device to device: a distribution in steps of the
 * quantity's own unit.
 *
 * @param address key of the scenario with dots between its blocks, such as "sensor.offset"
 * @param unit of the steps
 * @param kind shape of the density
 * @param lower end, or for {@link Kind#NORMAL} the mean
 * @param upper end, above the lower one; for {@link Kind#NORMAL} the mean plus one standard
 *     uncertainty
 * @param topPartsPerMillion for {@link Kind#TRAPEZOIDAL}: width of the top over that of the base
 * @param minimum smallest value that the scenario can hold there
 * @param maximum largest value that the scenario can hold there
 */
public record Tolerance(
        String address,
        RecordUnit unit,
        Kind kind,
        long lower,
        long upper,
        long topPartsPerMillion,
        long minimum,
        long maximum) {

    /** Shapes of a density, in the words of JCGM 101. */
    public enum Kind {
        /** Each value between two ends alike. */
        RECTANGULAR("rectangular"),
        /** Normal about a mean, without ends. */
        NORMAL("normal"),
        /** Rises to the middle and falls again. */
        TRIANGULAR("triangular"),
        /** Of what swings like a sine between two ends: densest at the ends. */
        ARCSINE("arcsine"),
        /** A flat top with slopes on either side. */
        TRAPEZOIDAL("trapezoidal");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** The name in study files. */
        public String key() {
            return key;
        }
    }
}
