/**
 * Gauges under test behind one interface. May import the core and memory; never plant, frontend.
 */
@NullMarked
package org.gaugebench.sim.device;

import org.jspecify.annotations.NullMarked;
