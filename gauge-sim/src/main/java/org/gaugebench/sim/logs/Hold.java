package org.gaugebench.sim.logs;

/** What a row's current means between rows. */
public enum Hold {
    /** A row's value holds over the interval that ends at it: rows are means, or report changes. */
    NEXT,
    /** A row's value holds from the row on, up to the next row. */
    PREVIOUS,
    /** The current runs in a straight line from row to row. */
    LINEAR
}
