package org.gaugebench.sim.study;

/** A study that cannot be carried out or put together; the message says why and what to do. */
public final class StudyException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String explanation;

    /** Creates the exception. */
    public StudyException(String message) {
        super(message);
        this.explanation = message;
    }

    /** What is wrong and what to do, for people. */
    public String explanation() {
        return explanation;
    }
}
