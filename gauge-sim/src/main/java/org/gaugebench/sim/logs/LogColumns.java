package org.gaugebench.sim.logs;

import org.jspecify.annotations.Nullable;

/**
 * Names of the columns to read, exactly as the header writes them.
 *
 * @param time seconds or date-times
 * @param current amps, or milliamps where told so
 * @param voltage volts, or null for none
 * @param temperature degrees Celsius, or null for none
 * @param counter the log's own count in ampere-hours, signed like the current; null for none
 */
public record LogColumns(
        String time,
        String current,
        @Nullable String voltage,
        @Nullable String temperature,
        @Nullable String counter) {}
