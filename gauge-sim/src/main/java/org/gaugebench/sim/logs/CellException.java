package org.gaugebench.sim.logs;

/** A cell that cannot be read; the reader adds the place. */
final class CellException extends Exception {
    private static final long serialVersionUID = 1L;

    CellException(String message) {
        super(message);
    }
}
