package org.gaugebench.core.port;

/**
 * What may be asked of a running gauge from outside, each with one integer argument. Changing the
 * settings is the one command that carries more than an integer: {@code
 * Gauge.changeSettings(GaugeSettings)}.
 */
public enum Command {
    /** Declares the state of charge; argument in parts per million, 0 to 1,000,000. */
    DECLARE_STATE_OF_CHARGE,
    /** Takes the last minute's mean shunt reading as zero current; argument unused. */
    ZERO_ADJUSTMENT,
    /**
     * Corrects the gain by a reference meter at two currents: given twice; argument: the meter's
     * reading in microamps, positive into the battery.
     */
    SPAN_ADJUSTMENT,
    /** Another battery of the same kind was fitted; argument unused. */
    NEW_BATTERY,
    /** Drops measured capacity and efficiency, keeps the declared ones; argument unused. */
    FORGET_MEASURED
}
