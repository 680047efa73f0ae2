package org.gaugebench.sim.judge;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.scenario.Expectation.Reading;

/** One place that knows what a reading is, on the gauge's side and on the truth's. */
final class Readings {
    /** Stands for a reading that the gauge does not know, or a truth that has no figure. */
    static final long NONE = Long.MIN_VALUE;

    private static final double MINUTES_PER_HOUR = 60;

    private Readings() {}

    /** What the gauge shows, in the reading's unit, or {@link #NONE}; without power: nothing. */
    static long shown(Reading reading, Lane lane, Readout readout, Truth truth) {
        if (!lane.hasPower() && reading != Reading.TRUE_STATE_OF_CHARGE) {
            return NONE;
        }
        return switch (reading) {
            case STATE_OF_CHARGE ->
                    readout.trust == Trust.UNKNOWN ? NONE : readout.stateOfChargePartsPerMillion;
            case REMAINING_CHARGE ->
                    readout.trust == Trust.UNKNOWN
                            ? NONE
                            : readout.remainingNanocoulombs / 3_600_000;
            case LOWER_EDGE -> readout.bandUnknown ? NONE : readout.lowerEdgePartsPerMillion;
            case UPPER_EDGE -> readout.bandUnknown ? NONE : readout.upperEdgePartsPerMillion;
            case CURRENT -> readout.currentMicroamps;
            case VOLTAGE -> readout.voltageMicrovolts;
            case TIME_TO_EMPTY ->
                    readout.timeToEmptyState == EstimateState.ESTIMATE
                                    || readout.timeToEmptyState == EstimateState.MORE_THAN
                            ? readout.timeToEmptyMinutes
                            : NONE;
            case TRUE_STATE_OF_CHARGE -> truth(reading, truth);
        };
    }

    /**
     * What is really so, in the reading's unit, or {@link #NONE}. The true time to empty is the one
     * at the present load: charge over current, where current flows out.
     */
    static long truth(Reading reading, Truth truth) {
        return switch (reading) {
            case STATE_OF_CHARGE, LOWER_EDGE, UPPER_EDGE, TRUE_STATE_OF_CHARGE ->
                    StrictMath.round(truth.stateOfCharge() * 1e6);
            case REMAINING_CHARGE -> StrictMath.round(truth.chargeAmpHours() * 1e6);
            case CURRENT -> StrictMath.round(truth.meanCurrentAmps() * 1e6);
            case VOLTAGE -> StrictMath.round(truth.voltageVolts() * 1e6);
            case TIME_TO_EMPTY ->
                    truth.meanCurrentAmps() < 0
                            ? (long)
                                    (truth.chargeAmpHours()
                                            / -truth.meanCurrentAmps()
                                            * MINUTES_PER_HOUR)
                            : NONE;
        };
    }
}
