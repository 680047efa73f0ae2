package org.gaugebench.core.saved;

/** The answer of {@link SlotChooser}: which slot to believe, and how far. */
public final class SlotDecision {
    /** Stands in {@link #newestSlot} where no slot holds a record that checks. */
    public static final int NO_SLOT = -1;

    /** What was found. */
    public SlotOutcome outcome = SlotOutcome.NONE_VALID;

    /** The slot with the newest record that checks, or {@link #NO_SLOT}. */
    public int newestSlot = NO_SLOT;

    /** How many slots are neither blank nor valid. */
    public int damagedSlots;

    /** Creates the answer for no slots, for reuse. */
    public SlotDecision() {}
}
