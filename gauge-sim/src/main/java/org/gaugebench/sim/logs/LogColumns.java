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
 * @param uptime seconds since the unit that wrote the log was powered up; null for none
 * @param shown state of charge that the unit showed, in percent; null for none. Its cells may be
 *     empty
 */
public record LogColumns(
        String time,
        String current,
        @Nullable String voltage,
        @Nullable String temperature,
        @Nullable String counter,
        @Nullable String uptime,
        @Nullable String shown) {

    /** A log that says nothing of the unit that wrote it. */
    public LogColumns(
            String time,
            String current,
            @Nullable String voltage,
            @Nullable String temperature,
            @Nullable String counter) {
        this(time, current, voltage, temperature, counter, null, null);
    }
}
