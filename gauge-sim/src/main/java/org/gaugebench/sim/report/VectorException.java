package org.gaugebench.sim.report;

/** Vectors that cannot be read, or with which a gauge does not agree; the message says where. */
public final class VectorException extends Exception {
    private static final long serialVersionUID = 1L;

    VectorException(String message) {
        super(message);
    }
}
