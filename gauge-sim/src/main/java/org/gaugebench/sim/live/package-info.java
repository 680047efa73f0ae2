/**
 * A run that a class works with: a bench that goes on, stands still and takes what somebody does,
 * its account book and its history, and the page on this machine that shows them. Nothing here
 * reaches a result but through the timeline of the scenario.
 */
@NullMarked
package org.gaugebench.sim.live;

import org.jspecify.annotations.NullMarked;
