package org.gaugebench.sim.judge;

/** Two runs that cannot be held against each other; the message says why. */
public final class ComparisonException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Says why. */
    public ComparisonException(String message) {
        super(message);
    }
}
