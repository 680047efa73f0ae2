/** Gauges built for comparison: each does one thing that a real gauge might do. */
@NullMarked
package org.gaugebench.sim.device.exhibits;

import org.jspecify.annotations.NullMarked;
