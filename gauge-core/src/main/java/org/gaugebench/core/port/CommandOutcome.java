package org.gaugebench.core.port;

/** The one-word answer to a {@link Command}. */
public enum CommandOutcome {
    /** Carried out. */
    DONE,
    /** The argument lies outside the command's range; nothing changed. */
    REFUSED_OUT_OF_RANGE,
    /** No whole minute has been seen: there is nothing to adjust by. */
    REFUSED_NO_MINUTE,
    /** The last minute's current is not provably zero: a load or a charger is on. */
    REFUSED_NOT_ZERO,
    /** The current moved too much in the last minute. */
    REFUSED_UNSTABLE,
    /** First of two points taken; the same command at another current completes the adjustment. */
    FIRST_POINT_TAKEN,
    /** The two points lie less than a tenth of the rated current apart; the first was dropped. */
    REFUSED_POINTS_TOO_CLOSE,
    /** The gain would change by more than 5 %: shunt rating or reference is wrong. */
    REFUSED_TOO_LARGE,
    /** This core does not offer the command; nothing changed. */
    REFUSED_NOT_OFFERED
}
