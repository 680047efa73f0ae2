package org.gaugebench.sim.report;

import java.util.Arrays;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.jspecify.annotations.Nullable;

/** When the full-charge rule of one gauge changed its state or its reason, and to what. */
final class ReportStates {
    /** Stands for a gauge without power. */
    static final int NONE = -1;

    /** Reasons fit below: a code is the state times this, and the reason. */
    static final int REASONS = 64;

    /** Changes kept in a bucket: a rule that chatters must not fill the page. */
    private static final int MOST_IN_A_BUCKET = 6;

    private final long bucketTicks;
    private long[] ticks = new long[64];
    private int[] codes = new int[64];
    private int size;
    private int last = Integer.MIN_VALUE;
    private long bucketEnd = -1;
    private int inBucket;
    private long leftOut;

    ReportStates(long bucketTicks) {
        this.bucketTicks = bucketTicks;
    }

    /** Takes what holds at a tick; no state where the gauge has no power. */
    void add(long tick, @Nullable RuleState state, RuleReason reason) {
        int code = state == null ? NONE : state.ordinal() * REASONS + reason.ordinal();
        if (code == last) {
            return;
        }
        if (tick > bucketEnd) {
            bucketEnd = ReportChannel.endOfBucket(tick, bucketTicks);
            inBucket = 0;
        }
        last = code;
        if (++inBucket > MOST_IN_A_BUCKET) {
            // What it ends in has to stand: only what was in between is lost.
            leftOut++;
            size--;
        }
        if (size == ticks.length) {
            ticks = Arrays.copyOf(ticks, 2 * size);
            codes = Arrays.copyOf(codes, 2 * size);
        }
        ticks[size] = tick;
        codes[size] = code;
        size++;
    }

    int size() {
        return size;
    }

    long tick(int index) {
        return ticks[index];
    }

    /** {@link #NONE}, or state times {@value #REASONS} plus reason. */
    int code(int index) {
        return codes[index];
    }

    /** How many changes are not kept. */
    long leftOut() {
        return leftOut;
    }
}
