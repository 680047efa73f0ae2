package org.gaugebench.sim.adopt;

import java.util.Arrays;

/** Numbers one after the other; the array grows by half. */
final class LongColumn {
    private long[] values = new long[1024];
    private int size;

    void add(long value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + size / 2);
        }
        values[size++] = value;
    }

    long get(int index) {
        return values[index];
    }

    /** In rising numbers, the last place that holds at most a value; 0 where none does. */
    int placeOf(long value) {
        int found = Arrays.binarySearch(values, 0, size, value);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }

    int size() {
        return size;
    }
}
