package org.gaugebench.sim.report;

/**
 * Integers written as decimals with a fixed number of places, exactly and fast: a trace of a year
 * writes tens of millions of them.
 */
final class Decimals {
    private Decimals() {}

    /** The value over ten to the places, such as -1.050 for -1050 and 3. */
    static String plain(long value, int places) {
        StringBuilder text = new StringBuilder(24);
        append(text, value, places);
        return text.toString();
    }

    /** Appends the value over ten to the places. */
    static void append(StringBuilder text, long value, int places) {
        if (value < 0) {
            text.append('-');
        }
        int start = text.length();
        text.append(value);
        if (value < 0) {
            text.deleteCharAt(start);
        }
        int digits = text.length() - start;
        while (digits <= places) {
            text.insert(start, '0');
            digits++;
        }
        if (places > 0) {
            text.insert(text.length() - places, '.');
        }
    }
}
