package org.gaugebench.core.port;

/** The one-word answer to a {@link Command}. */
public enum CommandOutcome {
    /** Carried out. */
    DONE,
    /** The argument lies outside the command's range; nothing changed. */
    REFUSED_OUT_OF_RANGE,
    /** This core does not offer the command; nothing changed. */
    REFUSED_NOT_OFFERED
}
