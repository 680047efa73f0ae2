package org.gaugebench.sim.rig;

import org.gaugebench.sim.plant.Truth;

/** The truth as a twin's shunt meets it: all of the battery's current, or only what is stored. */
final class TwinTruth implements Truth {
    private static final double MILLIS_PER_HOUR = 3.6e6;

    private final Truth real;
    private final boolean atTerminal;
    private final boolean storedOnly;
    private double lastAmpHours;
    private long lastMillis;
    private double storedAmps;

    /**
     * Looks through at the truth.
     *
     * @param last causes up to this one are taken away
     */
    TwinTruth(Truth real, Cause last) {
        this.real = real;
        atTerminal = last.compareTo(Cause.PAST_SHUNT) >= 0;
        storedOnly = last.compareTo(Cause.LOSSES) >= 0;
        lastAmpHours = real.chargeAmpHours();
        lastMillis = real.timeMillis();
    }

    /** To be told after every step: what is stored is the change of the true charge. */
    void look() {
        long passed = real.timeMillis() - lastMillis;
        if (storedOnly && passed > 0) {
            double ampHours = real.chargeAmpHours();
            storedAmps = (ampHours - lastAmpHours) * MILLIS_PER_HOUR / passed;
            lastAmpHours = ampHours;
            lastMillis = real.timeMillis();
        }
    }

    @Override
    public void step(int millis) {
        throw new UnsupportedOperationException("a twin does not move the truth");
    }

    @Override
    public double meanShuntAmps() {
        if (storedOnly) {
            return storedAmps;
        }
        return atTerminal ? real.meanCurrentAmps() : real.meanShuntAmps();
    }

    @Override
    public double shuntAmps() {
        return atTerminal ? meanShuntAmps() : real.shuntAmps();
    }

    @Override
    public long timeMillis() {
        return real.timeMillis();
    }

    @Override
    public double meanCurrentAmps() {
        return real.meanCurrentAmps();
    }

    @Override
    public double currentAmps() {
        return real.currentAmps();
    }

    @Override
    public double batteryVolts() {
        return real.batteryVolts();
    }

    @Override
    public double voltageVolts() {
        return real.voltageVolts();
    }

    @Override
    public double instantVolts() {
        return real.instantVolts();
    }

    @Override
    public double temperatureCelsius() {
        return real.temperatureCelsius();
    }

    @Override
    public double chargeAmpHours() {
        return real.chargeAmpHours();
    }

    @Override
    public double capacityAmpHours() {
        return real.capacityAmpHours();
    }
}
