package org.gaugebench.sim.plant;

/**
 * What is really so. Only the front end and the judge may look.
 *
 * <p>Sign: positive current flows into the battery.
 */
public interface Truth {
    /**
     * Moves the truth forward.
     *
     * @param millis length of the step, above 0
     */
    void step(int millis);

    /** Simulated time since the start, in milliseconds. */
    long timeMillis();

    /** Mean battery current over the last step, in amps. */
    double meanCurrentAmps();

    /** Battery current at the end of the last step, in amps. */
    double currentAmps();

    /**
     * Mean current through the shunt over the last step, in amps; positive towards the battery. Of
     * the battery's own current it lacks what goes past the shunt.
     */
    default double meanShuntAmps() {
        return meanCurrentAmps();
    }

    /** Current through the shunt at the end of the last step, in amps. */
    default double shuntAmps() {
        return currentAmps();
    }

    /** Voltage between the battery's terminals at the end of the last step, in volts. */
    default double batteryVolts() {
        return voltageVolts();
    }

    /** Voltage between the gauge's leads at the end of the last step, in volts. */
    double voltageVolts();

    /** The same at this very instant: pulses of a charger faster than the step lift and drop it. */
    default double instantVolts() {
        return voltageVolts();
    }

    /** Battery temperature, in degrees Celsius. */
    double temperatureCelsius();

    /** Charge extractable at 25 °C and the 20 h rate, in ampere-hours. */
    double chargeAmpHours();

    /** The same when full, in ampere-hours. */
    double capacityAmpHours();

    /** True state of charge, 0 to 1: charge over capacity. */
    default double stateOfCharge() {
        return chargeAmpHours() / capacityAmpHours();
    }
}
