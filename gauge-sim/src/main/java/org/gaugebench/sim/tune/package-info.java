/**
 * Searches the settings of the full-charge rule over a set of scenarios: which of them let a full
 * through that is none, which miss one, and what that costs in points. Knows runs and settings;
 * knows no file and no page.
 */
@NullMarked
package org.gaugebench.sim.tune;

import org.jspecify.annotations.NullMarked;
