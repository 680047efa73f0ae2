package org.gaugebench.sim.study;

/** A study that cannot be carried out or put together; the message says why and what to do. */
public final class StudyException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Creates the exception. */
    public StudyException(String message) {
        super(message);
    }
}
