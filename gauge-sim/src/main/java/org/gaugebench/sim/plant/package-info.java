/**
 * The truth: battery, chargers, loads and wiring in floating point. May import scenario, units and
 * random; never the core.
 */
@NullMarked
package org.gaugebench.sim.plant;

import org.jspecify.annotations.NullMarked;
