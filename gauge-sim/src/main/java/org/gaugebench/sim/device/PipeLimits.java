package org.gaugebench.sim.device;

/** What a program may write, and how long it may take. */
public final class PipeLimits {
    /** Longest line in bytes, its line feed included: a slot of the largest size and then some. */
    static final int MOST_LINE_BYTES = 16_384;

    /** Longest frame with its head. */
    static final int MOST_FRAME_BYTES = 65_536;

    /** Bytes of the largest slot that a scenario can have. */
    static final int MOST_SLOT_BYTES = 4_096;

    /** Messages before one answer: a program that talks for ever must end too. */
    static final int MOST_MESSAGES = 100_000;

    /** Time to answer where nobody says otherwise: a debugger's pause is longer, a hang too. */
    public static final long ANSWER_MILLIS = 10_000;

    private PipeLimits() {}
}
