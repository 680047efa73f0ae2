package org.gaugebench.core.rules;

/** The one word with which a rule answers; the gauge alone acts on it. */
public enum RuleOutcome {
    /** Nothing to do. */
    NONE,
    /** Full is proven: set the count to the capacity. */
    SET_TO_FULL,
    /** Enough was discharged since full: the proof is used up. */
    ARMED
}
