package org.gaugebench.sim.frontend;

import org.gaugebench.sim.scenario.SensorSpec;

/** The shunt as it really is: rated resistance, tolerance and the channel's input offset. */
final class ShuntModel {
    private final double ohms;
    private double offsetVolts;

    ShuntModel(SensorSpec spec) {
        double ratedOhms = (double) spec.shuntRatedMicrovolts() / spec.shuntRatedMicroamps();
        ohms = ratedOhms * (1 + spec.shuntErrorPartsPerMillion() / 1e6);
        setOffsetNanovolts(spec.offsetNanovolts());
    }

    void setOffsetNanovolts(long nanovolts) {
        offsetVolts = nanovolts / 1e9;
    }

    /** Voltage at the converter's input. */
    double voltsAt(double amps) {
        return amps * ohms + offsetVolts;
    }
}
