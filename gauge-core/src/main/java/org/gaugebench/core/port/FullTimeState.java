package org.gaugebench.core.port;

/** What kind of answer the time to full is. */
public enum FullTimeState {
    /** There is nothing to say: the charge is unknown. */
    NO_ESTIMATE,
    /** The net current is below the least that counts as charging. */
    NOT_CHARGING,
    /** The source is not steady; any time would be wrong. */
    UNSTEADY,
    /** Full not before the figure: the taper is unknown, too new, or beyond the longest time. */
    NOT_BEFORE,
    /** The figure is the estimate. */
    ESTIMATE
}
