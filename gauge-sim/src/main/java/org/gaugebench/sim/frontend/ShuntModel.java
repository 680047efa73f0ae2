package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.SensorSpec;

/** The shunt as it really is: rated resistance, tolerance and the channel's input offset. */
final class ShuntModel implements ShuntPath {
    private final double ohms;
    private double offsetVolts;

    ShuntModel(SensorSpec spec) {
        ohms = ohms(spec);
        setOffsetNanovolts(spec.offsetNanovolts());
    }

    /** The resistance at the reference temperature. */
    static double ohms(SensorSpec spec) {
        double ratedOhms = (double) spec.shuntRatedMicrovolts() / spec.shuntRatedMicroamps();
        return ratedOhms * (1 + spec.shuntErrorPartsPerMillion() / 1e6);
    }

    @Override
    public void setOffsetNanovolts(long nanovolts) {
        offsetVolts = nanovolts / 1e9;
    }

    @Override
    public double voltsAt(double amps, Truth truth) {
        return amps * ohms + offsetVolts;
    }
}
