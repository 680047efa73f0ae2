/**
 * Measured logs: the reader of CSV files in the shapes loggers write, what a row means between
 * rows, and the checks a log must pass before anything is counted. Knows nothing of gauges.
 */
@NullMarked
package org.gaugebench.sim.logs;

import org.jspecify.annotations.NullMarked;
