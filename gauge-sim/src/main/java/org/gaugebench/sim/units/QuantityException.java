package org.gaugebench.sim.units;

/** A text that is not the quantity it should be; the message says what was expected. */
public final class QuantityException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String explanation;

    /**
     * Creates the exception.
     *
     * @param message what was expected, with an example, and what was found
     */
    public QuantityException(String message) {
        super(message);
        explanation = message;
    }

    /**
     * What was expected and what was found.
     *
     * @return the message, never null
     */
    public String explanation() {
        return explanation;
    }
}
