/**
 * Microamps times milliseconds become nanocoulombs, exactly; the count, its clamps and what the
 * minute brought. May import fixed, port, settings and sense; does not know why a count is
 * corrected.
 */
package org.gaugebench.core.charge;
