package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A figure over the whole run in fixed memory. The time is cut into {@value #COLUMNS} equal columns
 * and each keeps its first, smallest, largest and last value with their moments: no spike is lost,
 * however short, and a slope stays a slope.
 */
final class PictureCurve {
    static final int COLUMNS = 560;

    private static final int KEPT = 4;
    private static final int FIRST = 0;
    private static final int SMALLEST = 1;
    private static final int LARGEST = 2;
    private static final int LAST = 3;

    /**
     * A value at its moment.
     *
     * @param atMillis from the start of the run
     * @param value in the series' own small unit
     */
    record Point(long atMillis, long value) {}

    private final long durationMillis;
    private final long[] values = new long[(COLUMNS + 1) * KEPT];
    private final long[] moments = new long[(COLUMNS + 1) * KEPT];
    private final boolean[] silent = new boolean[COLUMNS + 1];

    PictureCurve(long durationMillis) {
        this.durationMillis = durationMillis;
        Arrays.fill(values, PictureSeries.NONE);
    }

    /** Adds a value; times do not go back. {@link PictureSeries#NONE} makes a gap. */
    void add(long atMillis, long value) {
        int column = (int) (Math.min(atMillis, durationMillis) * COLUMNS / durationMillis);
        if (value == PictureSeries.NONE) {
            silent[column] = true;
            return;
        }
        int at = column * KEPT;
        if (values[at] == PictureSeries.NONE) {
            for (int i = 0; i < KEPT; i++) {
                put(at + i, atMillis, value);
            }
            return;
        }
        if (value < values[at + SMALLEST]) {
            put(at + SMALLEST, atMillis, value);
        }
        if (value > values[at + LARGEST]) {
            put(at + LARGEST, atMillis, value);
        }
        put(at + LAST, atMillis, value);
    }

    private void put(int index, long atMillis, long value) {
        moments[index] = atMillis;
        values[index] = value;
    }

    /** Smallest value of all, or {@link PictureSeries#NONE}. */
    long lowest() {
        return extreme(SMALLEST, true);
    }

    /** Largest value of all, or {@link PictureSeries#NONE}. */
    long highest() {
        return extreme(LARGEST, false);
    }

    private long extreme(int which, boolean smallest) {
        long best = PictureSeries.NONE;
        for (int column = 0; column <= COLUMNS; column++) {
            long value = values[column * KEPT + which];
            boolean better = smallest ? value < best : value > best;
            if (value != PictureSeries.NONE && (best == PictureSeries.NONE || better)) {
                best = value;
            }
        }
        return best;
    }

    /** What was kept, in order of time, broken where a whole column knows no value. */
    List<List<Point>> pieces() {
        List<List<Point>> pieces = new ArrayList<>();
        List<Point> piece = new ArrayList<>();
        for (int column = 0; column <= COLUMNS; column++) {
            int at = column * KEPT;
            if (values[at] != PictureSeries.NONE) {
                boolean smallestFirst = moments[at + SMALLEST] <= moments[at + LARGEST];
                add(piece, at + FIRST);
                add(piece, at + (smallestFirst ? SMALLEST : LARGEST));
                add(piece, at + (smallestFirst ? LARGEST : SMALLEST));
                add(piece, at + LAST);
            } else if (silent[column] && !piece.isEmpty()) {
                pieces.add(piece);
                piece = new ArrayList<>();
            }
        }
        if (!piece.isEmpty()) {
            pieces.add(piece);
        }
        return pieces;
    }

    private void add(List<Point> piece, int index) {
        Point point = new Point(moments[index], values[index]);
        if (piece.isEmpty() || !piece.get(piece.size() - 1).equals(point)) {
            piece.add(point);
        }
    }

    /** Whether the two are further apart than a distance somewhere; gaps count as apart. */
    boolean differs(PictureCurve other, long distance) {
        for (int i = 0; i < values.length; i++) {
            boolean none = values[i] == PictureSeries.NONE;
            if (none != (other.values[i] == PictureSeries.NONE)
                    || (!none && Math.abs(values[i] - other.values[i]) > distance)) {
                return true;
            }
        }
        return false;
    }
}
