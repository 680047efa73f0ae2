package org.gaugebench.core.port;

/** Where the full-charge rule stands. */
public enum RuleState {
    /** Full was proven and not enough has been discharged since: the rule does not look. */
    NOT_ARMED,
    /** Looking: voltage or current does not speak for full. */
    WAITING,
    /** Voltage and current speak for full; a hold time is running. */
    HOLDING,
    /** The hold is interrupted by a short gap, and goes on where it stood if the gap ends soon. */
    PAUSED
}
