package org.gaugebench.sim.judge;

/** What is called full when a gauge's 100 % is held against the battery's, in millionths. */
public final class FullCharge {
    /**
     * A full that is announced below this is false: the widest residual that the rule itself claims
     * for lead-acid (F12's late residual), and the loosest anchor of the shelf's right set-ups.
     */
    public static final long FALSE_BELOW_PARTS = 950_000;

    /**
     * From here on the battery really is full: within the hundredth that an unproven count may not
     * pass (G4).
     */
    public static final long IS_FULL_PARTS = 990_000;

    /** Below this a battery that was full is in use again. */
    public static final long IS_USED_PARTS = 950_000;

    private FullCharge() {}
}
