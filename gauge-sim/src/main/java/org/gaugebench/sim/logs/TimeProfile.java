package org.gaugebench.sim.logs;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** Figures at rising times, as a CSV file gives them. Two with the same figures are equal. */
public final class TimeProfile {
    private static final int CONTENT_BYTES = 8;

    private final long[] millis;
    private final long[] micros;
    private final String content;

    /**
     * Takes over the columns.
     *
     * @param millis from the start of the run, rising, at least two, from 0
     * @param micros millionths of the unit, as many
     */
    TimeProfile(long[] millis, long[] micros) {
        this.millis = millis;
        this.micros = micros;
        content = contentOf(millis, micros);
    }

    private static String contentOf(long[] millis, long[] micros) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            ByteBuffer row = ByteBuffer.allocate(2 * Long.BYTES);
            for (int i = 0; i < millis.length; i++) {
                row.putLong(0, millis[i]).putLong(Long.BYTES, micros[i]);
                digest.update(row.array());
            }
            return HexFormat.of().formatHex(digest.digest(), 0, CONTENT_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Number of rows, at least 2. */
    public int rows() {
        return millis.length;
    }

    /** Time of a row in milliseconds from the start of the run, 0 or above. */
    public long millis(int row) {
        return millis[row];
    }

    /** Figure of a row: microamps, microwatts or microvolts, in the direction asked for. */
    public long micros(int row) {
        return micros[row];
    }

    /** Time of the last row. */
    public long endMillis() {
        return millis[millis.length - 1];
    }

    /** Largest figure. */
    public long largestMicros() {
        return Arrays.stream(micros).max().orElse(0);
    }

    /**
     * A short name for the figures: 16 hex digits, the first 64 bits of the SHA-256 of all times
     * and figures as read. Layout, names of columns and the unit in the file do not matter.
     */
    public String content() {
        return content;
    }

    /** Row that a time lies in or behind: the last one at or before it; -1 before the first. */
    public int rowAt(long atMillis) {
        int found = Arrays.binarySearch(millis, atMillis);
        return found >= 0 ? found : -found - 2;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TimeProfile it
                && Arrays.equals(millis, it.millis)
                && Arrays.equals(micros, it.micros);
    }

    @Override
    public int hashCode() {
        return content.hashCode();
    }

    @Override
    public String toString() {
        return rows() + " rows, content " + content;
    }
}
