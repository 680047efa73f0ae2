package org.gaugebench.sim.study;

/**
 * What is kept of one device: as much for a day as for ten years.
 *
 * @param number from 1
 * @param steps its value of each tolerance, in steps of the tolerance's unit
 * @param errors shown less true at each moment of the band, in the reading's unit, or {@link #NONE}
 * @param worst the error farthest from zero at any whole minute, or {@link #NONE}
 * @param worstAtMillis when it came first
 * @param unknownMinutes whole minutes at which the gauge knew nothing
 */
@SuppressWarnings("ArrayRecordComponent") // small, and nobody changes them or compares them
public record DeviceRow(
        int number,
        long[] steps,
        long[] errors,
        long worst,
        long worstAtMillis,
        long unknownMinutes) {
    /** Stands where there is no error because the gauge knows nothing. */
    public static final long NONE = Long.MIN_VALUE;

    /** Bytes that stay for a device: two arrays, this object, and its place in a list. */
    public static int keptBytes(int tolerances, int moments) {
        int arrayHead = 16;
        int object = 48;
        int place = 8;
        return 2 * arrayHead + object + place + Long.BYTES * (tolerances + moments);
    }
}
