package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;

/** A truth set by hand: every figure stands until it is set again. */
final class HandTruth implements Truth {
    double amps;

    /** What the current at an instant has on top of its mean. */
    double rippleAmps;

    double volts = 12.8;
    double celsius = 25;
    long millis;

    @Override
    public void step(int stepMillis) {
        millis += stepMillis;
    }

    @Override
    public long timeMillis() {
        return millis;
    }

    @Override
    public double meanCurrentAmps() {
        return amps;
    }

    @Override
    public double currentAmps() {
        return amps + rippleAmps;
    }

    @Override
    public double voltageVolts() {
        return volts;
    }

    @Override
    public double temperatureCelsius() {
        return celsius;
    }

    @Override
    public double chargeAmpHours() {
        return 50;
    }

    @Override
    public double capacityAmpHours() {
        return 100;
    }
}
