package org.gaugebench.core.rules;

/** The one word with which a rule answers; the gauge alone acts on it. */
public enum RuleOutcome {
    /** Nothing to do. */
    NONE,
    /** Full is proven: set the count to the capacity. */
    SET_TO_FULL,
    /** Enough was discharged since full: the proof is used up. */
    ARMED,
    /** Empty is proven: set the count to the empty state. */
    SET_TO_EMPTY,
    /**
     * The battery is at its empty voltage though the count says otherwise: tell, keep the count.
     */
    EARLY_EMPTY,
    /** The rested voltage is worth more than the count: move the count, narrow the band. */
    CORRECTED_BY_REST,
    /** The rested voltage bounds the truth: clip the band, keep the count. */
    BAND_CLIPPED
}
