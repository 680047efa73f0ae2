package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/** What stands between the battery's true voltage and the voltage converter. */
interface VoltagePath {
    /** Leads at the battery itself and a channel without error, which takes the mean of pulses. */
    VoltagePath TRUE = Truth::voltageVolts;

    /** The same, of a channel that looks at an instant. */
    VoltagePath TRUE_AT_INSTANTS = Truth::instantVolts;

    /** Voltage at the converter's input. */
    double voltsAt(Truth truth);

    /**
     * The path of a sensor.
     *
     * @param integrating whether it takes the mean of what moves faster than a tick
     */
    static VoltagePath of(SensorTraits traits, boolean integrating) {
        double gain = 1 + traits.get(SensorTrait.VOLTAGE_GAIN_ERROR) / 1e6;
        double offset = traits.get(SensorTrait.VOLTAGE_OFFSET) / 1e6;
        double ohms = traits.get(SensorTrait.VOLTAGE_SENSE_RESISTANCE) / 1e6;
        if (gain == 1 && offset == 0 && ohms == 0) {
            return integrating ? TRUE : TRUE_AT_INSTANTS;
        }
        return integrating
                ? truth -> (truth.voltageVolts() + truth.meanCurrentAmps() * ohms) * gain + offset
                : truth -> (truth.instantVolts() + truth.currentAmps() * ohms) * gain + offset;
    }
}
