package org.gaugebench.core.port;

/** How far the state of charge may be believed. */
public enum Trust {
    /** Never anchored: there is no state of charge to show. */
    UNKNOWN,
    /** Counted on from a value that somebody declared. */
    DECLARED,
    /** Counted on from a proven full charge. */
    PROVEN
}
