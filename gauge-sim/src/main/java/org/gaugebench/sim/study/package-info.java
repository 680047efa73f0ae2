/**
 * Uncertainty: what the tolerances of parts do to a gauge's error, by Monte Carlo (JCGM 101) and by
 * first-order propagation (JCGM 100) side by side, over many devices of one scenario. May not know
 * how anything is printed or drawn.
 */
@NullMarked
package org.gaugebench.sim.study;

import org.jspecify.annotations.NullMarked;
