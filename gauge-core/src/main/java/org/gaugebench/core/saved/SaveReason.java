package org.gaugebench.core.saved;

/** Why the state shall be saved now. */
public enum SaveReason {
    /** It shall not. */
    NONE,
    /** Settings were changed by somebody. */
    SETTINGS_CHANGED,
    /** The count was corrected. */
    ANCHORED,
    /** A save step of charge moved since the last save. */
    CHARGE_MOVED,
    /** The voltage falls fast: the supply may be gone in a moment. */
    VOLTS_FALLING,
    /** A day passed since the last save. */
    DAY_PASSED
}
