package org.gaugebench.sim.advice;

import org.gaugebench.sim.units.ShuntRating;

/**
 * One shunt in one system.
 *
 * @param rating what is printed on it
 * @param fit whether it carries the system's currents
 * @param steadyMillivolts drop at the steady current
 * @param steadyWatts heat at the steady current
 * @param stepAmps one step of the gauge's converter
 * @param stepAmpHoursPerMonth what a current of one step makes in 30 days
 * @param microvoltAmps what one microvolt of offset shows as
 * @param microvoltAmpHoursPerMonth what that makes in 30 days
 * @param microvoltPercentPerMonth the same in percent of the battery
 */
public record ShuntChoice(
        ShuntRating rating,
        Fit fit,
        double steadyMillivolts,
        double steadyWatts,
        double stepAmps,
        double stepAmpHoursPerMonth,
        double microvoltAmps,
        double microvoltAmpHoursPerMonth,
        double microvoltPercentPerMonth) {

    /** Whether a shunt carries what flows. */
    public enum Fit {
        /** It does. */
        FITS("fits"),
        /** The steady current is above two thirds of the rating. */
        TOO_WARM("too warm: steady current above two thirds of the rating"),
        /** The peak is above the rating. */
        OVERLOADED("too small: the peak is above the rating"),
        /** The gauge cannot see the peak: its drop is beyond the converter's full scale. */
        CLIPPED("the peak is beyond what the gauge can see");

        private final String words;

        Fit(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }
}
