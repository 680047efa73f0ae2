/**
 * Truth becomes counts: shunt, converters and their errors. The only door from the plant to a
 * gauge. May import plant, random, scenario and the core's port.
 */
@NullMarked
package org.gaugebench.sim.frontend;

import org.jspecify.annotations.NullMarked;
