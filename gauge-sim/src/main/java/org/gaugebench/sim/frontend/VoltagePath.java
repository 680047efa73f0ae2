package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Follower;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.jspecify.annotations.Nullable;

/** What stands between the battery's true voltage and the voltage converter. */
interface VoltagePath {
    /** Leads at the battery itself and a channel without error, which takes the mean of pulses. */
    VoltagePath TRUE = Truth::voltageVolts;

    /** The same, of a channel that looks at an instant. */
    VoltagePath TRUE_AT_INSTANTS = Truth::instantVolts;

    /** A file instead of the truth, as far as it goes. */
    private static VoltagePath logged(Follower follower, VoltagePath beyond) {
        return truth ->
                follower.covers(truth.timeMillis())
                        ? follower.shownAt(truth.timeMillis())
                        : beyond.voltsAt(truth);
    }

    /** Voltage at the converter's input. */
    double voltsAt(Truth truth);

    /**
     * The path of a sensor.
     *
     * @param profile file that the channel shows as far as it goes; null for none
     * @param integrating whether it takes the mean of what moves faster than a tick
     */
    static VoltagePath of(SensorTraits traits, @Nullable ProfileSpec profile, boolean integrating) {
        VoltagePath own = integrating ? TRUE : TRUE_AT_INSTANTS;
        VoltagePath input = profile == null ? own : logged(new Follower(profile), own);
        double gain = 1 + traits.get(SensorTrait.VOLTAGE_GAIN_ERROR) / 1e6;
        double offset = traits.get(SensorTrait.VOLTAGE_OFFSET) / 1e6;
        double ohms = traits.get(SensorTrait.VOLTAGE_SENSE_RESISTANCE) / 1e6;
        if (gain == 1 && offset == 0 && ohms == 0) {
            return input;
        }
        return integrating
                ? truth -> (input.voltsAt(truth) + truth.meanCurrentAmps() * ohms) * gain + offset
                : truth -> (input.voltsAt(truth) + truth.currentAmps() * ohms) * gain + offset;
    }
}
