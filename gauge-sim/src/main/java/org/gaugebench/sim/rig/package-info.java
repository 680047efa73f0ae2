/**
 * Wires one truth to any number of gauges and moves them on, one tick at a time. May import
 * everything listed before it; never the judge.
 */
@NullMarked
package org.gaugebench.sim.rig;

import org.jspecify.annotations.NullMarked;
