package org.gaugebench.sim.live;

import java.util.Arrays;

/**
 * The past of a few figures, reduced: at each of several zoom levels a ring of buckets that keep
 * the lowest and the highest value of their time. It takes the same memory after ten years as after
 * ten minutes.
 */
final class History {
    /** Buckets of a level: about one for each two pixels of a wide chart. */
    static final int BUCKETS = 600;

    /**
     * Widths of the buckets; a level shows 20 minutes, 10 hours, 2 days, 37 days (a month, and what
     * comes after it), 10 months, 13 and 260 years.
     */
    private static final long[] WIDTHS_MILLIS = {
        2_000, 60_000, 300_000, 5_400_000, 43_200_000, 8L * 86_400_000, 160L * 86_400_000
    };

    private final int figures;
    private final Ring[] rings = new Ring[WIDTHS_MILLIS.length];

    /**
     * Creates an empty history.
     *
     * @param figures how many are kept
     */
    History(int figures) {
        this.figures = figures;
        for (int level = 0; level < rings.length; level++) {
            rings[level] = new Ring(WIDTHS_MILLIS[level], figures);
        }
    }

    /** How many zoom levels there are. */
    static int levels() {
        return WIDTHS_MILLIS.length;
    }

    /** Width of a bucket, in milliseconds. */
    static long widthMillis(int level) {
        return WIDTHS_MILLIS[level];
    }

    int figures() {
        return figures;
    }

    /**
     * Adds a moment to every level from one on.
     *
     * @param millis from the start; never earlier than the last one
     * @param values one for each figure; NaN where it is not known
     * @param fromLevel 1 where moments come a minute apart: the finest level would show gaps
     */
    void add(long millis, double[] values, int fromLevel) {
        for (int level = fromLevel; level < rings.length; level++) {
            rings[level].add(millis, values);
        }
    }

    /** Empties the finest level: what comes next does not join what is there. */
    void forgetFinest() {
        rings[0].clear();
    }

    /** First bucket that is kept, by its number from the start of the run. */
    long first(int level) {
        return rings[level].first();
    }

    /** The bucket that is being filled, or -1. */
    long last(int level) {
        return rings[level].last;
    }

    /**
     * Lowest value of a figure in a bucket.
     *
     * @return NaN where nothing is known
     */
    double lowest(int level, long bucket, int figure) {
        return rings[level].at(bucket, 2 * figure);
    }

    /** Highest value of a figure in a bucket. */
    double highest(int level, long bucket, int figure) {
        return rings[level].at(bucket, 2 * figure + 1);
    }

    /** One zoom level. */
    private static final class Ring {
        private final long widthMillis;
        private final int figures;
        private final float[] values;
        private final long[] numbers = new long[BUCKETS];
        private long last = -1;

        Ring(long widthMillis, int figures) {
            this.widthMillis = widthMillis;
            this.figures = figures;
            values = new float[BUCKETS * figures * 2];
            clear();
        }

        void clear() {
            last = -1;
            Arrays.fill(numbers, -1);
        }

        void add(long millis, double[] now) {
            long number = millis / widthMillis;
            int place = (int) (number % BUCKETS);
            int base = place * figures * 2;
            if (numbers[place] != number) {
                numbers[place] = number;
                Arrays.fill(values, base, base + figures * 2, Float.NaN);
            }
            last = number;
            for (int i = 0; i < figures; i++) {
                float value = (float) now[i];
                int low = base + 2 * i;
                if (!(values[low] <= value)) {
                    values[low] = keep(values[low], value);
                }
                if (!(values[low + 1] >= value)) {
                    values[low + 1] = keep(values[low + 1], value);
                }
            }
        }

        /** What is not known takes nothing away from what is. */
        private static float keep(float kept, float value) {
            return Float.isNaN(value) ? kept : value;
        }

        long first() {
            long oldest = Math.max(0, last - BUCKETS + 1);
            for (long number = oldest; number <= last; number++) {
                if (numbers[(int) (number % BUCKETS)] == number) {
                    return number;
                }
            }
            return last;
        }

        double at(long number, int column) {
            int place = (int) (number % BUCKETS);
            return number < 0 || numbers[place] != number
                    ? Double.NaN
                    : values[place * figures * 2 + column];
        }
    }
}
