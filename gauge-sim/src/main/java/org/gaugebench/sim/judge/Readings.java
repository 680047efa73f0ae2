package org.gaugebench.sim.judge;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.plant.TrueTimeToEmpty;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Expectation.Reading;

/** One place that knows what a reading is, on the gauge's side and on the truth's. */
public final class Readings {
    /** Stands for a reading that the gauge does not know. */
    public static final long NONE = Long.MIN_VALUE;

    private static final long MINUTE_MILLIS = 60_000;

    private Readings() {}

    /** What the gauge shows, in the reading's unit, or {@link #NONE}; without power: nothing. */
    public static long shown(Reading reading, Lane lane, Readout readout, Rig rig) {
        if (!lane.hasPower() && !reading.isOfTruthAlone()) {
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
            case AVERAGE_CURRENT -> readout.averageCurrentMicroamps;
            case FULL_CHARGE_CAPACITY -> readout.fullChargeNanocoulombs / 3_600_000;
            case TIME_TO_FULL ->
                    readout.timeToFullState == FullTimeState.ESTIMATE
                            ? readout.timeToFullMinutes
                            : NONE;
            case TEMPERATURE ->
                    readout.temperatureMillicelsius == Sample.TEMPERATURE_ABSENT
                            ? NONE
                            : readout.temperatureMillicelsius;
            case TRUE_STATE_OF_CHARGE,
                    TRUE_CURRENT,
                    TRUE_VOLTAGE,
                    TRUE_TEMPERATURE,
                    AVAILABLE_CHARGE,
                    TRUE_TIME_TO_EMPTY_LOAD_HELD,
                    TRUE_TIME_TO_EMPTY_AS_IT_GOES ->
                    truth(reading, rig);
        };
    }

    /**
     * What is really so, in the reading's unit. A gauge's time to empty speaks of the present load,
     * and so does its truth. Whole minutes, rounded down, as a gauge has to.
     */
    public static long truth(Reading reading, Rig rig) {
        Truth truth = rig.truth();
        return switch (reading) {
            case STATE_OF_CHARGE, LOWER_EDGE, UPPER_EDGE, TRUE_STATE_OF_CHARGE ->
                    StrictMath.round(truth.stateOfCharge() * 1e6);
            case REMAINING_CHARGE -> StrictMath.round(truth.chargeAmpHours() * 1e6);
            case CURRENT, TRUE_CURRENT -> StrictMath.round(truth.meanCurrentAmps() * 1e6);
            case VOLTAGE, TRUE_VOLTAGE -> StrictMath.round(truth.voltageVolts() * 1e6);
            case FULL_CHARGE_CAPACITY -> StrictMath.round(truth.capacityAmpHours() * 1e6);
            case TEMPERATURE, TRUE_TEMPERATURE ->
                    StrictMath.round(truth.temperatureCelsius() * 1e3);
            case AVERAGE_CURRENT, TIME_TO_FULL -> NONE;
            case AVAILABLE_CHARGE -> StrictMath.round(rig.outlook().availableAmpHours() * 1e6);
            case TIME_TO_EMPTY, TRUE_TIME_TO_EMPTY_LOAD_HELD ->
                    minutes(rig.outlook().millisWithLoadHeld());
            case TRUE_TIME_TO_EMPTY_AS_IT_GOES -> minutes(rig.outlook().millisAsItGoes());
        };
    }

    private static long minutes(long millis) {
        return millis == TrueTimeToEmpty.NEVER ? Reading.NEVER : millis / MINUTE_MILLIS;
    }
}
