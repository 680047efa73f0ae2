package org.gaugebench.core.port;

/** Where the full-charge rule stands. */
public enum RuleState {
    /** Full was proven and not enough has been discharged since: the rule does not look. */
    NOT_ARMED,
    /** Looking: voltage or current does not speak for full. */
    WAITING,
    /** Voltage and current speak for full; the hold time is running. */
    HOLDING
}
