/**
 * What a run looks like on paper: text for a terminal, JSON for programs, CSV for plots, one
 * picture for a paper, one page to look into. May import the rig and the judge; knows nothing of
 * command lines.
 */
@NullMarked
package org.gaugebench.sim.report;

import org.jspecify.annotations.NullMarked;
