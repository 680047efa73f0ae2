package org.gaugebench.sim.adopt;

/**
 * A stretch of a log in which nothing was written, or in which its unit had no power.
 *
 * @param fromMillis time of the last row before it
 * @param toMillis time of the first row after it, or moment at which power came back
 * @param line of that row
 */
record LogSpan(long fromMillis, long toMillis, int line) {}
