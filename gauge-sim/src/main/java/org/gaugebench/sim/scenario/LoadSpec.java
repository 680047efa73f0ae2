package org.gaugebench.sim.scenario;

/**
 * A load, steady or cycling.
 *
 * @param name as the scenario calls it
 * @param switchedOn whether it is on at the start
 * @param kind what stays constant
 * @param amount microamps, microwatts or microohms by kind; above zero
 * @param onMillis length of the on part of a cycle; 0 for a steady load
 * @param periodMillis length of a cycle; 0 for a steady load
 * @param traits what goes beyond on, off and a cycle
 */
public record LoadSpec(
        String name,
        boolean switchedOn,
        Kind kind,
        long amount,
        long onMillis,
        long periodMillis,
        LoadTraits traits) {

    /** A load without traits. */
    public LoadSpec(
            String name,
            boolean switchedOn,
            Kind kind,
            long amount,
            long onMillis,
            long periodMillis) {
        this(name, switchedOn, kind, amount, onMillis, periodMillis, LoadTraits.NONE);
    }

    /** What stays constant while the voltage moves. */
    public enum Kind {
        /** Microamps. */
        CONSTANT_CURRENT,
        /** Microwatts. */
        CONSTANT_POWER,
        /** Microohms. */
        CONSTANT_RESISTANCE
    }
}
