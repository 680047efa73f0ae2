package org.gaugebench.sim.report;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Every tick around the moments that matter, one row a tick with a column for each channel. What
 * led to such a moment is taken from a ring of the last ticks.
 */
final class ReportWindows {
    /** Stands where nobody looked at this tick: neither a value nor a gap. */
    static final int NOT_LOOKED = Integer.MIN_VALUE + 1;

    /** Ticks kept before and after a moment, at most: five minutes of seconds. */
    static final int REACH_TICKS = 300;

    /** Moments with a window, at most; failures come on top. */
    private static final int MOST_MOMENTS = 400;

    private static final int MOST_FAILURES = 100;

    private final int columns;
    private final int mostRows;
    private long[] ticks = new long[256];
    private int[] values;
    private int rows;
    private long[] moments = new long[16];
    private boolean[] failures = new boolean[16];
    private int momentCount;
    private int failureCount;
    private long openUntil = -1;
    private int reach = REACH_TICKS;
    private int rowsToCount;

    /**
     * Starts empty.
     *
     * @param columns of a row
     * @param mostRows that will be kept in the end, see {@link #reachFor}
     */
    ReportWindows(int columns, int mostRows) {
        this.columns = columns;
        this.mostRows = mostRows;
        rowsToCount = mostRows;
        this.values = new int[256 * columns];
    }

    /**
     * Opens a window around a tick.
     *
     * @return the first tick whose row is still to be taken from the past, or -1 if the moment gets
     *     no window
     */
    long open(long tick, boolean isFailure) {
        if (isFailure ? failureCount >= MOST_FAILURES : momentCount >= MOST_MOMENTS) {
            return -1;
        }
        if (momentCount == moments.length) {
            moments = Arrays.copyOf(moments, 2 * momentCount);
            failures = Arrays.copyOf(failures, 2 * momentCount);
        }
        moments[momentCount] = tick;
        failures[momentCount] = isFailure;
        momentCount++;
        failureCount += isFailure ? 1 : 0;
        long from = rows == 0 ? 0 : ticks[rows - 1] + 1;
        int wanted = isFailure ? REACH_TICKS : reach();
        openUntil = Math.max(openUntil, tick + wanted);
        return Math.max(from, tick - wanted);
    }

    /**
     * The reach that may still be kept: moments to come only make it smaller, and to look at rows
     * that go in the end costs as much as a run of its own.
     */
    private int reach() {
        if (rows > rowsToCount) {
            reach = reachFor();
            rowsToCount = 2 * rows;
        }
        return reach;
    }

    /** Whether the row of this tick is wanted. */
    boolean isOpen(long tick) {
        return tick <= openUntil;
    }

    /** Whether the row of this tick stands already. */
    boolean hasRow(long tick) {
        return rows > 0 && ticks[rows - 1] >= tick;
    }

    /** Starts the row of a tick, with nothing in it; ticks grow. */
    void row(long tick) {
        if (rows == ticks.length) {
            ticks = Arrays.copyOf(ticks, 2 * rows);
            values = Arrays.copyOf(values, 2 * rows * columns);
        }
        ticks[rows] = tick;
        Arrays.fill(values, rows * columns, (rows + 1) * columns, NOT_LOOKED);
        rows++;
    }

    /** Sets a cell of the row started last. */
    void set(int column, int value) {
        values[(rows - 1) * columns + column] = value;
    }

    int rows() {
        return rows;
    }

    long tick(int row) {
        return ticks[row];
    }

    int value(int row, int column) {
        return values[row * columns + column];
    }

    /** Largest reach at which few enough rows are left; failures keep their whole reach. */
    int reachFor() {
        int[] rowsAt = new int[REACH_TICKS + 1];
        for (int needed : neededReach()) {
            rowsAt[needed]++;
        }
        int reach = REACH_TICKS;
        while (reach > 1 && IntStream.of(rowsAt).limit(reach + 1L).sum() > mostRows) {
            reach = reach * 2 / 3;
        }
        return reach;
    }

    /** The rows within a reach of any moment. */
    int[] rowsWithin(int reach) {
        int[] needed = neededReach();
        return IntStream.range(0, rows).filter(row -> needed[row] <= reach).toArray();
    }

    /** Of each row the smallest reach at which it is within that of a moment. */
    private int[] neededReach() {
        int[] needed = new int[rows];
        int near = 0;
        for (int row = 0; row < rows; row++) {
            long tick = ticks[row];
            while (near < momentCount && moments[near] < tick - REACH_TICKS) {
                near++;
            }
            needed[row] = REACH_TICKS;
            for (int i = near; i < momentCount && moments[i] <= tick + REACH_TICKS; i++) {
                int away = (int) Math.abs(tick - moments[i]);
                needed[row] = Math.min(needed[row], failures[i] ? 0 : away);
            }
        }
        return needed;
    }
}
