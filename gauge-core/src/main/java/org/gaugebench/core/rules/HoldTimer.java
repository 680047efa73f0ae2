package org.gaugebench.core.rules;

/**
 * A hold time that forgives short gaps: outside the range it first pauses, then runs back minute
 * for minute, and starts again when the gap was long.
 *
 * <p>A pump that cycles once in ten minutes would reset a strict hold for ever; a charger that
 * stops would keep a purely forgiving one for ever.
 */
final class HoldTimer {
    /** A gap up to this long only pauses. */
    static final int PAUSE_MINUTES = 2;

    /** A gap this long starts the hold again. */
    static final int RESET_MINUTES = 15;

    // State.
    private int heldMinutes;
    private int outsideMinutes;

    /** A minute inside the range. */
    void inside() {
        heldMinutes++;
        outsideMinutes = 0;
    }

    /** A minute outside the range. */
    void outside() {
        outsideMinutes++;
        if (outsideMinutes >= RESET_MINUTES) {
            heldMinutes = 0;
        } else if (outsideMinutes > PAUSE_MINUTES && heldMinutes > 0) {
            heldMinutes--;
        }
    }

    void reset() {
        heldMinutes = 0;
        outsideMinutes = 0;
    }

    /** Whole minutes held; saturates far above any setting because a proof resets it. */
    int heldMinutes() {
        return heldMinutes;
    }
}
