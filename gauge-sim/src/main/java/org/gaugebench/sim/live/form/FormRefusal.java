package org.gaugebench.sim.live.form;

/** A message or a file that cannot be taken; nothing has changed by it. */
public final class FormRefusal extends Exception {
    private static final long serialVersionUID = 1L;

    private final int status;

    /**
     * Creates a refusal.
     *
     * @param status of HTTP, from 400 on
     * @param reason what is wrong and what was expected, in one sentence
     */
    FormRefusal(int status, String reason) {
        super(reason, null, false, false);
        this.status = status;
    }

    /** Status of HTTP. */
    public int status() {
        return status;
    }

    /** The reason, for whoever asked. */
    public String reason() {
        String reason = getMessage();
        return reason == null ? "" : reason;
    }
}
