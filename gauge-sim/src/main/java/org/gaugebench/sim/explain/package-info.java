/**
 * One moment of a run with the core's arithmetic laid open, step by step. Works every figure out
 * again from counts, settings and registers, and holds it against the registers; uses nothing of
 * the core but what its ports show.
 */
@NullMarked
package org.gaugebench.sim.explain;

import org.jspecify.annotations.NullMarked;
