package org.gaugebench.sim.cli;

/** The user's input is wrong in a way that the message tells; ends with exit code 2. */
final class InputException extends Exception {
    private static final long serialVersionUID = 1L;

    InputException(String message) {
        super(message);
    }
}
