package org.gaugebench.core.port;

/** How well the time without power is known at power-up. */
public enum OffTime {
    /** A clock that ran through: the stated time is the time. */
    EXACT,
    /** A counter that saturates or may have started late: at least the stated time. */
    AT_LEAST,
    /** Nothing is known. */
    UNKNOWN
}
