package org.gaugebench.sim.judge;

import java.util.Arrays;

/**
 * A figure over time in fixed memory: smallest and largest value of each of at most {@value
 * #BUCKETS} equal spans. When they are full, neighbours merge and the span doubles, so that no
 * spike is lost however long the run.
 */
public final class Track {
    /** Most spans kept. */
    public static final int BUCKETS = 2_048;

    private final float[] lowest;
    private final float[] highest;
    private int used;
    private int span = 1;
    private int inLast;

    /** Creates an empty track. */
    public Track() {
        this(BUCKETS);
    }

    /** Creates an empty track of that many spans; of none where nothing will be added. */
    Track(int buckets) {
        lowest = new float[buckets];
        highest = new float[buckets];
        Arrays.fill(lowest, Float.NaN);
        Arrays.fill(highest, Float.NaN);
    }

    /** Adds the next value; NaN where there is none. */
    public void add(double value) {
        if (used == 0 || inLast == span) {
            if (used == BUCKETS) {
                mergeNeighbours();
            } else {
                used++;
                inLast = 0;
            }
        }
        if (inLast == span) {
            used++;
            inLast = 0;
        }
        int last = used - 1;
        lowest[last] = smaller(lowest[last], (float) value);
        highest[last] = larger(highest[last], (float) value);
        inLast++;
    }

    private void mergeNeighbours() {
        for (int i = 0; i < BUCKETS / 2; i++) {
            lowest[i] = smaller(lowest[2 * i], lowest[2 * i + 1]);
            highest[i] = larger(highest[2 * i], highest[2 * i + 1]);
        }
        Arrays.fill(lowest, BUCKETS / 2, BUCKETS, Float.NaN);
        Arrays.fill(highest, BUCKETS / 2, BUCKETS, Float.NaN);
        used = BUCKETS / 2;
        span *= 2;
        inLast = span;
    }

    private static float smaller(float a, float b) {
        return Float.isNaN(a) ? b : Float.isNaN(b) ? a : Math.min(a, b);
    }

    private static float larger(float a, float b) {
        return Float.isNaN(a) ? b : Float.isNaN(b) ? a : Math.max(a, b);
    }

    /** Spans in use. */
    public int size() {
        return used;
    }

    /** Smallest value of a span; NaN where it has none. */
    public double lowest(int bucket) {
        return lowest[bucket];
    }

    /** Largest value of a span; NaN where it has none. */
    public double highest(int bucket) {
        return highest[bucket];
    }
}
