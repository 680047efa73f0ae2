package org.gaugebench.core.saved;

/** What was found in the slots at power-up, in one word. */
public enum SlotOutcome {
    /**
     * The newest record that was ever completed, as far as the slots can tell. It is at most one
     * save step old.
     */
    NEWEST,
    /**
     * The newest record that checks is used, but another slot holds bytes that do not: a save that
     * was cut, or a newer record that rotted. The two cannot be told apart, so the state may be two
     * save steps old.
     */
    OLDER_ONE_USED,
    /** No slot holds a record that checks: the state of charge is unknown. */
    NONE_VALID,
    /**
     * The record was written under other settings for the same kind of battery: the percentage is
     * kept, the band is widened.
     */
    FOREIGN_SETTINGS,
    /** The record speaks of another chemistry or system voltage: the state of charge is unknown. */
    FOREIGN_BATTERY
}
