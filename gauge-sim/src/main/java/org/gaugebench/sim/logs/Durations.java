package org.gaugebench.sim.logs;

import java.math.BigDecimal;

/** Lengths of time as people read them. */
public final class Durations {
    private static final long NANOS_PER_SECOND = 1_000_000_000L;

    private Durations() {}

    /** "0.25 s", "59 s", "2 min 30 s", "5 h 13 min", "3 d 2 h": at most two units. */
    public static String words(long nanos) {
        if (nanos < 60 * NANOS_PER_SECOND) {
            return BigDecimal.valueOf(nanos, 9).stripTrailingZeros().toPlainString() + " s";
        }
        long seconds = nanos / NANOS_PER_SECOND;
        if (seconds < 3_600) {
            return two(seconds / 60, "min", seconds % 60, "s");
        }
        if (seconds < 86_400) {
            return two(seconds / 3_600, "h", seconds % 3_600 / 60, "min");
        }
        return two(seconds / 86_400, "d", seconds % 86_400 / 3_600, "h");
    }

    private static String two(long large, String largeUnit, long small, String smallUnit) {
        return large + " " + largeUnit + (small == 0 ? "" : " " + small + " " + smallUnit);
    }
}
