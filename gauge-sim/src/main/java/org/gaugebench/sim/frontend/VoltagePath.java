package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/** What stands between the battery's true voltage and the voltage converter. */
interface VoltagePath {
    /** Leads at the battery itself and a channel without error. */
    VoltagePath TRUE = Truth::voltageVolts;

    /** Voltage at the converter's input. */
    double voltsAt(Truth truth);

    /** The path of a sensor. */
    static VoltagePath of(SensorTraits traits) {
        double gain = 1 + traits.get(SensorTrait.VOLTAGE_GAIN_ERROR) / 1e6;
        double offset = traits.get(SensorTrait.VOLTAGE_OFFSET) / 1e6;
        double ohms = traits.get(SensorTrait.VOLTAGE_SENSE_RESISTANCE) / 1e6;
        return gain == 1 && offset == 0 && ohms == 0
                ? TRUE
                : truth -> (truth.voltageVolts() + truth.meanCurrentAmps() * ohms) * gain + offset;
    }
}
