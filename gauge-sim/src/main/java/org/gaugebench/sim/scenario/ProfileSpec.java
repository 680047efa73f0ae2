package org.gaugebench.sim.scenario;

import org.gaugebench.sim.logs.TimeProfile;

/**
 * A figure that follows a CSV file.
 *
 * @param file name of the file beside the scenario
 * @param timeColumn column of seconds since the start of the run
 * @param valueColumn column of the figures
 * @param figure what they are
 * @param unit in which the file has them
 * @param positiveIsCharge what a positive figure of the file does to the battery; for a voltage
 *     without meaning
 * @param straightLine whether figures run straight from row to row; if not, each holds until the
 *     next row
 * @param repeats whether the profile begins again at its end; if not, nothing comes after it
 * @param longestGapMillis longest step between rows that the file may have; 0 for any
 * @param bothWays whether a load may also feed the battery
 * @param values as read: what a load draws, what a charger gives, or the voltage shown
 */
public record ProfileSpec(
        String file,
        String timeColumn,
        String valueColumn,
        Figure figure,
        String unit,
        boolean positiveIsCharge,
        boolean straightLine,
        boolean repeats,
        long longestGapMillis,
        boolean bothWays,
        TimeProfile values) {

    /** What follows the file. */
    public enum Figure {
        /** Microamps. */
        CURRENT,
        /** Microwatts. */
        POWER,
        /** Microvolts. */
        VOLTAGE
    }
}
