package org.gaugebench.core.port;

/** What kind of answer the hours are. */
public enum EstimateState {
    /**
     * There is nothing to say: no minute yet, charge unknown, or current within the offset bound.
     */
    NO_ESTIMATE,
    /** The figure is the estimate. */
    ESTIMATE,
    /** More than the figure: the display's last hour is a limit, not a measurement. */
    MORE_THAN,
    /** The battery is being charged; there is no time to empty. */
    CHARGING
}
