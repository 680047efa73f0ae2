package org.gaugebench.core.saved;

/** The one-word answer to a save. */
public enum SaveOutcome {
    /** Written, read back and equal: the record is the current one. */
    SAVED,
    /** As {@link #SAVED}, but at least one slot failed on the way: memory fault. */
    SAVED_AFTER_FAILURE,
    /** Every slot that may be written failed: memory fault; the record before stays current. */
    NOT_SAVED,
    /** The store has fewer than two slots, or slots too small for a record. */
    NO_STORE;

    /**
     * Whether the memory failed somewhere during this save.
     *
     * @return true where the gauge shall raise its memory fault
     */
    public boolean isMemoryFault() {
        return this == SAVED_AFTER_FAILURE || this == NOT_SAVED;
    }

    /**
     * Whether the state now stands in the memory.
     *
     * @return true after a record was read back and found equal
     */
    public boolean isSaved() {
        return this == SAVED || this == SAVED_AFTER_FAILURE;
    }
}
