package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Follower;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.jspecify.annotations.Nullable;

/** What stands between the battery's true voltage and the voltage converter. */
interface VoltagePath {
    /** Leads at the battery itself and a channel without error. */
    VoltagePath TRUE = Truth::voltageVolts;

    /** A file instead of the truth, as far as it goes. */
    private static VoltagePath logged(Follower follower) {
        return truth ->
                follower.covers(truth.timeMillis())
                        ? follower.shownAt(truth.timeMillis())
                        : truth.voltageVolts();
    }

    /** Voltage at the converter's input. */
    double voltsAt(Truth truth);

    /** The path of a sensor. */
    static VoltagePath of(SensorTraits traits, @Nullable ProfileSpec profile) {
        VoltagePath input = profile == null ? TRUE : logged(new Follower(profile));
        double gain = 1 + traits.get(SensorTrait.VOLTAGE_GAIN_ERROR) / 1e6;
        double offset = traits.get(SensorTrait.VOLTAGE_OFFSET) / 1e6;
        double ohms = traits.get(SensorTrait.VOLTAGE_SENSE_RESISTANCE) / 1e6;
        return gain == 1 && offset == 0 && ohms == 0
                ? input
                : truth -> (input.voltsAt(truth) + truth.meanCurrentAmps() * ohms) * gain + offset;
    }
}
