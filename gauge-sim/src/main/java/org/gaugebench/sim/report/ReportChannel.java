package org.gaugebench.sim.report;

import java.util.Arrays;

/**
 * One figure over a whole run in little memory. The run is cut into equal buckets of whole ticks;
 * each keeps its smallest and its largest value, both at the tick at which they were, so no spike
 * is lost, however short, and nothing is drawn where it was not. The first value, the last one, and
 * the edges of times without a value are kept too.
 */
final class ReportChannel {
    /** Stands where there is no value: a gap. */
    static final int GAP = Integer.MIN_VALUE;

    /** Edges of gaps kept in one bucket: a supply that flickers must not fill the memory. */
    private static final int MOST_EDGES = 8;

    private final long bucketTicks;
    private long[] ticks = new long[64];
    private int[] values = new int[64];
    private int size;

    private long bucketEnd = -1;
    private boolean any;
    private int smallest;
    private long smallestAt;
    private int largest;
    private long largestAt;
    private final long[] edgeTicks = new long[2 * MOST_EDGES];
    private final int[] edgeValues = new int[2 * MOST_EDGES];
    private int edges;

    private boolean started;
    private long lastTick;
    private int lastValue = GAP;

    /**
     * Starts empty.
     *
     * @param bucketTicks ticks of a bucket, at least 1
     */
    ReportChannel(long bucketTicks) {
        this.bucketTicks = bucketTicks;
    }

    /** Ticks after which the bucket of a tick ends; buckets begin after tick 0. */
    static long endOfBucket(long tick, long bucketTicks) {
        return tick <= 0 ? 0 : ((tick - 1) / bucketTicks + 1) * bucketTicks;
    }

    /** Adds a value, or {@link #GAP}; ticks do not go back. */
    void add(long tick, int value) {
        enter(tick);
        boolean known = value != GAP;
        if (started && known != (lastValue != GAP)) {
            edge(lastTick, lastValue);
            edge(tick, value);
        } else if (!started) {
            edge(tick, value);
        }
        if (known) {
            extreme(tick, value);
        }
        last(tick, value);
    }

    private void extreme(long tick, int value) {
        if (!any || value < smallest) {
            smallest = value;
            smallestAt = tick;
        }
        if (!any || value > largest) {
            largest = value;
            largestAt = tick;
        }
        any = true;
    }

    /**
     * Adds values, or gaps, of ticks in a row, all of one bucket: the same as adding each of them.
     *
     * @param firstTick of them
     * @param ring where they stand, by tick modulo its length, a power of two
     * @param count how many, at least 1
     */
    void addRow(long firstTick, int[] ring, int count) {
        int mask = ring.length - 1;
        long tick = firstTick;
        long end = firstTick + count;
        while (tick < end) {
            int first = ring[(int) tick & mask];
            add(tick, first);
            tick = first == GAP ? endOfGap(tick, ring, end) : endOfKnown(tick, ring, end);
            last(tick - 1, ring[(int) (tick - 1) & mask]);
        }
    }

    private static long endOfGap(long from, int[] ring, long end) {
        int mask = ring.length - 1;
        long tick = from;
        while (tick < end && ring[(int) tick & mask] == GAP) {
            tick++;
        }
        return tick;
    }

    /** What {@link #extreme} does with each, on figures at hand: this is done in every tick. */
    private long endOfKnown(long from, int[] ring, long end) {
        int mask = ring.length - 1;
        int count = (int) (end - from);
        int low = smallest;
        int high = largest;
        int lowAt = -1;
        int highAt = -1;
        int next = 1;
        for (; next < count; next++) {
            int value = ring[((int) from + next) & mask];
            if (value < low) {
                if (value == GAP) {
                    break;
                }
                low = value;
                lowAt = next;
            } else if (value > high) {
                high = value;
                highAt = next;
            }
        }
        smallest = low;
        smallestAt = lowAt < 0 ? smallestAt : from + lowAt;
        largest = high;
        largestAt = highAt < 0 ? largestAt : from + highAt;
        return from + next;
    }

    private void last(long tick, int value) {
        started = true;
        lastTick = tick;
        lastValue = value;
    }

    private void edge(long tick, int value) {
        if (edges < edgeTicks.length) {
            edgeTicks[edges] = tick;
            edgeValues[edges] = value;
            edges++;
        }
    }

    private void enter(long tick) {
        if (tick > bucketEnd) {
            closeBucket();
            bucketEnd = endOfBucket(tick, bucketTicks);
        }
    }

    /** The bucket's points go out in order of time; those at the same tick once. */
    private void closeBucket() {
        boolean smallestFirst = smallestAt <= largestAt;
        int next = 0;
        for (int i = 0; any && i < 2; i++) {
            boolean small = smallestFirst == (i == 0);
            long at = small ? smallestAt : largestAt;
            while (next < edges && edgeTicks[next] <= at) {
                put(edgeTicks[next], edgeValues[next]);
                next++;
            }
            put(at, small ? smallest : largest);
        }
        while (next < edges) {
            put(edgeTicks[next], edgeValues[next]);
            next++;
        }
        any = false;
        edges = 0;
    }

    private void put(long tick, int value) {
        if (size > 0 && tick <= ticks[size - 1]) {
            return;
        }
        if (size == ticks.length) {
            ticks = Arrays.copyOf(ticks, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
        }
        ticks[size] = tick;
        values[size] = value;
        size++;
    }

    /** Ends the run: what is under way goes out, and the last value of all. */
    void close() {
        closeBucket();
        if (started) {
            put(lastTick, lastValue);
        }
    }

    /** Number of points kept; complete after {@link #close}. */
    int size() {
        return size;
    }

    /** Tick of a point. */
    long tick(int index) {
        return ticks[index];
    }

    /** Value of a point, or {@link #GAP}. */
    int value(int index) {
        return values[index];
    }
}
