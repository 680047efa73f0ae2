package org.gaugebench.sim.judge;

/** What a run was worth. */
public enum Verdict {
    /** Every expectation held. */
    PASSED("passed"),
    /** An expectation failed or was never evaluated. */
    FAILED("failed"),
    /** The scenario expects nothing: nothing was shown. */
    NO_VERDICT("no verdict");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** For people and for JSON. */
    public String words() {
        return words;
    }
}
