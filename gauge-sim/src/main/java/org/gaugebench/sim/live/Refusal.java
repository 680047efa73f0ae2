package org.gaugebench.sim.live;

/** A request that is answered with a reason and nothing else; the bench goes on as it was. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;

    private final int status;

    /**
     * Creates a refusal.
     *
     * @param status of HTTP, from 400 on
     * @param reason what is wrong, what was expected, and an example
     */
    Refusal(int status, String reason) {
        super(reason, null, false, false);
        this.status = status;
    }

    int status() {
        return status;
    }

    /** The reason, for whoever asked. */
    String reason() {
        String reason = getMessage();
        return reason == null ? "" : reason;
    }
}
