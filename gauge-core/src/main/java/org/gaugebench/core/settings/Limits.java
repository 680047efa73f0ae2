package org.gaugebench.core.settings;

/**
 * What a {@link Setting} may be.
 *
 * @param unit an SI symbol, "ppm", "bit", "code", "switch" or "counts/256"
 * @param minimum smallest value allowed, in that unit
 * @param maximum largest value allowed
 * @param usual value where the installer says nothing
 */
record Limits(String unit, long minimum, long maximum, long usual) {}
