package org.gaugebench.core.saved;

/** What is known of one slot: the kind of its content and, where that is valid, its header. */
public final class SlotHeader {
    /** What a slot holds. */
    public enum Content {
        /** Every byte is erased: nothing was written, or only the erase was. */
        BLANK,
        /** Neither blank nor a record that checks: torn, rotten, never ours, or absurd (M7). */
        DAMAGED,
        /** Begins as a record of a layout version that this core does not know. */
        UNKNOWN_VERSION,
        /** A record that checks and whose figures are within their ranges. */
        VALID
    }

    /** What the slot holds. */
    public Content content = Content.BLANK;

    /** Sequence number; meaning only with {@link Content#VALID}, as all that follows. */
    public int sequence;

    /** Fingerprint of the settings under which the record was written. */
    public int fingerprint;

    /** Chemistry code of those settings. */
    public int chemistryCode;

    /** System voltage of those settings. */
    public int nominalMillivolts;

    /** Creates the header of a blank slot, for reuse. */
    public SlotHeader() {}

    /**
     * Whether the slot holds a record that checks.
     *
     * @return true for {@link Content#VALID}
     */
    public boolean isValid() {
        return content == Content.VALID;
    }
}
