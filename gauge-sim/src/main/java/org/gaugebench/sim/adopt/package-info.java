/**
 * From a log of the field to a scenario: gaps, restarts, what the log's current counts to, and the
 * two files that come of it. Judges nothing: the scenario is run like any other.
 */
@NullMarked
package org.gaugebench.sim.adopt;

import org.jspecify.annotations.NullMarked;
