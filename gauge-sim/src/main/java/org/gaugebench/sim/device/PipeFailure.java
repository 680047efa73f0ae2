package org.gaugebench.sim.device;

import java.util.ArrayList;
import java.util.List;

/** A program under test did not keep to the protocol, ended, or took too long; it is killed. */
public final class PipeFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<String> details;

    private final String commandText;

    PipeFailure(String message, List<String> details, String commandText) {
        super(message, null, false, false);
        this.commandText = commandText;
        this.details = List.copyOf(details);
    }

    /** Lines below the message: where it was, the last exchange, the program's last words. */
    public List<String> details() {
        return details;
    }

    /** How the program was started, as the user wrote it. */
    public String commandText() {
        return commandText;
    }

    /** The same with one more line at the front of the details. */
    public PipeFailure with(String line) {
        List<String> more = new ArrayList<>(details);
        more.add(0, line);
        return new PipeFailure(String.valueOf(getMessage()), more, commandText);
    }
}
