package org.gaugebench.core.port;

/** How far the state of charge may be believed. */
public enum Trust {
    /** Never anchored: there is no state of charge to show. */
    UNKNOWN,
    /** Counted on from a value that somebody declared. */
    DECLARED,
    /** Counted on from an anchor that the gauge proved itself: full, empty or rested. */
    PROVEN
}
