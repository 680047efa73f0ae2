package org.gaugebench.sim.adopt;

import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * What a log does not say: battery, sensor, and how to read it.
 *
 * @param name of the scenario and of its two files
 * @param chemistry of the battery
 * @param nominalVolts 12, 24, 36 or 48
 * @param capacityMicroampHours as printed on the battery
 * @param startPartsPerMillion true state of charge at the first row
 * @param efficiencyPartsPerMillion part of the charge put in that comes out; 0 for the usual one
 * @param shunt of the unit
 * @param converter of the unit, or null for the usual one
 * @param counts whether the log's current is in counts of that converter
 * @param absorptionMicrovolts the charger's set voltage as told to the gauge; 0 for the usual one
 * @param tickMillis length of a tick
 * @param hold what a row's current means between rows
 * @param gapMillis longest step between rows that is no gap
 * @param gapCurrent what flows in a gap that nothing tells of; null where the user did not say
 * @param shownTolerancePartsPerMillion how near the gauge has to come to what the unit showed; 0
 *     for no such claim
 */
public record AdoptSetup(
        String name,
        Chemistry chemistry,
        int nominalVolts,
        long capacityMicroampHours,
        long startPartsPerMillion,
        long efficiencyPartsPerMillion,
        ShuntRating shunt,
        @Nullable ConverterRange converter,
        boolean counts,
        long absorptionMicrovolts,
        long tickMillis,
        Hold hold,
        long gapMillis,
        @Nullable GapCurrent gapCurrent,
        long shownTolerancePartsPerMillion) {

    /** At rest is a current under this part of the shunt's rating, as for a replay. */
    private static final double QUIET_PART = 0.001;

    /** What is taken to flow in a gap. */
    public enum GapCurrent {
        /** Nothing. */
        ZERO,
        /** What flowed before it. */
        BEFORE
    }

    /** Current under which a battery counts as at rest. */
    double quietAmps() {
        return QUIET_PART * shunt.microamps() / 1e6;
    }

    /** Amps in one unit of the log's current. */
    double ampsPerUnit() {
        if (!counts || converter == null) {
            return 1;
        }
        double voltsPerCount = converter.microvolts() / 1e6 / (1L << (converter.bits() - 1));
        return voltsPerCount * shunt.microamps() / shunt.microvolts();
    }
}
