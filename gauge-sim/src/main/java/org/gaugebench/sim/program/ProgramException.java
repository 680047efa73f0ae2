package org.gaugebench.sim.program;

/** A program that could not be started, ended, took too long or wrote too much. */
public final class ProgramException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Says what the program did.
     *
     * @param message without the program's name, such as "it ended with exit code 3"
     */
    public ProgramException(String message) {
        super(message, null, false, false);
    }
}
