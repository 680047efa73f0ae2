package org.gaugebench.sim.device;

import java.util.List;

/** A program under test did not keep to the protocol, ended, or took too long; it is killed. */
public final class PipeFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<String> details;

    PipeFailure(String message, List<String> details) {
        super(message, null, false, false);
        this.details = List.copyOf(details);
    }

    /** Lines below the message: where it was, the last exchange, the program's last words. */
    public List<String> details() {
        return details;
    }

    /** The same with one more line at the front of the details. */
    public PipeFailure with(String line) {
        List<String> more = new java.util.ArrayList<>(details);
        more.add(0, line);
        return new PipeFailure(String.valueOf(getMessage()), more);
    }
}
