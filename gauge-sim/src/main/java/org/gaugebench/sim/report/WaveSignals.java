package org.gaugebench.sim.report;

import java.util.Arrays;

/**
 * The signals of a value change dump: what was declared, what stands, and what changed, as IEEE
 * 1364-2005 clause 18 writes it. A vector is two's complement; leading zeros are left out, as the
 * standard allows, leading ones never.
 */
final class WaveSignals {
    /** Stands for a value that is not known; no signal has it for a figure. */
    static final long UNKNOWN = Long.MIN_VALUE;

    private static final char FIRST_CODE = '!';
    private static final int CODES = '~' - FIRST_CODE + 1;

    private final StringBuilder changes = new StringBuilder(512);
    private int[] widths = new int[64];
    private String[] codes = new String[64];
    private long[] values = new long[64];
    private int count;
    private boolean all = true;

    WaveSignals() {}

    /**
     * Declares the next signal.
     *
     * @param header takes the declaration
     * @param name without a space
     * @param width bits: 1 for a wire, else a vector
     */
    void declare(StringBuilder header, String name, int width) {
        if (count == widths.length) {
            widths = Arrays.copyOf(widths, 2 * count);
            codes = Arrays.copyOf(codes, 2 * count);
            values = Arrays.copyOf(values, 2 * count);
        }
        String code = code(count);
        widths[count] = width;
        codes[count] = code;
        count++;
        // Viewers show an integer in signed decimal figures, a register in hexadecimal ones.
        header.append(width == 1 ? "$var wire 1 " : "$var integer " + width + " ");
        header.append(code).append(' ').append(name).append(" $end\n");
    }

    /** The shortest code of printable characters that no signal before has. */
    private static String code(int number) {
        StringBuilder code = new StringBuilder(2);
        int left = number;
        do {
            code.append((char) (FIRST_CODE + left % CODES));
            left = left / CODES - 1;
        } while (left >= 0);
        return code.toString();
    }

    int count() {
        return count;
    }

    /** Sets a signal; one that does not fit its width is not known. */
    void set(int signal, long value) {
        int width = widths[signal];
        long fitting = fits(value, width) ? value : UNKNOWN;
        if (!all && values[signal] == fitting) {
            return;
        }
        values[signal] = fitting;
        if (width == 1) {
            changes.append(fitting == UNKNOWN ? 'x' : (char) ('0' + fitting));
        } else {
            changes.append('b');
            vector(fitting, width);
            changes.append(' ');
        }
        changes.append(codes[signal]).append('\n');
    }

    private static boolean fits(long value, int width) {
        if (width == 1) {
            return value == 0 || value == 1;
        }
        return width == Long.SIZE || value >> (width - 1) == value >> (Long.SIZE - 1);
    }

    private void vector(long value, int width) {
        if (value == UNKNOWN) {
            changes.append('x');
            return;
        }
        int top = value < 0 ? width : Math.max(1, Long.SIZE - Long.numberOfLeadingZeros(value));
        for (int bit = top - 1; bit >= 0; bit--) {
            changes.append((char) ('0' + (value >>> bit & 1)));
        }
    }

    /** What changed since the last call; all signals at the first one. The caller empties it. */
    StringBuilder changes() {
        all = false;
        return changes;
    }
}
