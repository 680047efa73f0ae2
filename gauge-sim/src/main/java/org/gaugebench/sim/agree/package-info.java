/**
 * Whether a program at the end of a pipe does exactly what the core does: sequences of calls drawn
 * at random, played to both, and shrunk to the shortest that still tells them apart.
 */
@NullMarked
package org.gaugebench.sim.agree;

import org.jspecify.annotations.NullMarked;
