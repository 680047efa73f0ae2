/** The judge: alone sees truth and reading together, and says what a run was worth. */
@NullMarked
package org.gaugebench.sim.judge;

import org.jspecify.annotations.NullMarked;
