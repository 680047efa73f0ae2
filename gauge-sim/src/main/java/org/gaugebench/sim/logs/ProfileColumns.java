package org.gaugebench.sim.logs;

/**
 * How two columns of a CSV file are read as a profile.
 *
 * @param time name of the column of seconds
 * @param value name of the column of figures
 * @param unit of the figures: A, mA, uA, W, mW, kW, V or mV
 * @param turned whether the figures change their sign while they are read
 * @param smallestMicros smallest figure once turned, in millionths of A, W or V
 * @param largestMicros largest figure once turned
 * @param whenTooSmall what to say of a figure under the smallest, after the figure itself
 * @param longestGapMillis longest step between rows; 0 for no limit
 */
public record ProfileColumns(
        String time,
        String value,
        String unit,
        boolean turned,
        long smallestMicros,
        long largestMicros,
        String whenTooSmall,
        long longestGapMillis) {

    /** Decimal places by which a figure moves to become millionths of the basic unit. */
    int places() {
        return switch (unit.charAt(0)) {
            case 'k' -> 9;
            case 'm' -> 3;
            case 'u' -> 0;
            default -> 6;
        };
    }
}
