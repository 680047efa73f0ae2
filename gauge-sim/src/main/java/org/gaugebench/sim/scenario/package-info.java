/**
 * What a scenario file says, as plain data, and the reader and writer of it. Knows the gauge's
 * settings and port; knows nothing of how the plant works.
 */
@NullMarked
package org.gaugebench.sim.scenario;

import org.jspecify.annotations.NullMarked;
