package org.gaugebench.sim.rig;

import java.util.List;
import org.gaugebench.core.port.Event;

/**
 * What a replay came to. All charges in nanocoulombs or ampere-hours, positive into the battery.
 *
 * @param ticks samples that the gauge counted; the first, which only sets its clock, left out
 * @param seconds time from the first row to the last
 * @param inNanocoulombs charge counted into the battery, before efficiency, clamps and rules
 * @param outNanocoulombs charge counted out of it, a positive figure
 * @param integralAmpHours integral of the log's current under the hold
 * @param throughputAmpHours integral of its magnitude: charge moved either way
 * @param stateOfChargePartsPerMillion the gauge's own reading at the end
 * @param ampsPerCount current of one code of the converter
 * @param clippedTicks ticks whose current did not fit the converter
 * @param events what the gauge announced, the first of them
 * @param digest fold of the registers at each whole minute and at the end
 */
public record ReplayResult(
        long ticks,
        double seconds,
        long inNanocoulombs,
        long outNanocoulombs,
        double integralAmpHours,
        double throughputAmpHours,
        long stateOfChargePartsPerMillion,
        double ampsPerCount,
        long clippedTicks,
        List<TimedEvent> events,
        long digest) {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /**
     * An event and when it was.
     *
     * @param uptimeMillis since the first row
     * @param event what
     * @param value its figure, in {@link Event#unit()}
     */
    public record TimedEvent(long uptimeMillis, Event event, long value) {}

    /** Net charge through the shunt, as the gauge counted it. */
    public double countedAmpHours() {
        return (inNanocoulombs - outNanocoulombs) / NANOCOULOMBS_PER_AMP_HOUR;
    }

    /** Charge counted into the battery. */
    public double inAmpHours() {
        return inNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
    }

    /** Charge counted out of the battery, a positive figure. */
    public double outAmpHours() {
        return outNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
    }

    /** A difference in percent of the throughput; not a number where nothing moved. */
    public double percentOfThroughput(double ampHours) {
        return throughputAmpHours == 0 ? Double.NaN : 100 * ampHours / throughputAmpHours;
    }
}
