package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/** The axis of time: round steps of seconds, minutes, hours or days, at most ten of them. */
final class PictureClock {
    private static final int MOST_STEPS = 10;
    private static final long SECOND = 1_000;
    private static final long MINUTE = 60 * SECOND;
    private static final long HOUR = 60 * MINUTE;
    private static final long DAY = 24 * HOUR;

    private record Unit(String words, long millis, List<Integer> steps) {}

    private static final List<Unit> UNITS =
            List.of(
                    new Unit("seconds", SECOND, List.of(1, 2, 5, 10, 15, 30)),
                    new Unit("minutes", MINUTE, List.of(1, 2, 5, 10, 15, 30)),
                    new Unit("hours", HOUR, List.of(1, 2, 3, 4, 6)),
                    new Unit("days", DAY, List.of(1, 2, 5, 10, 20, 50, 100, 1_000, 10_000)));

    private final long durationMillis;
    private final int left;
    private final int width;
    private Unit unit = UNITS.get(UNITS.size() - 1);
    private int step = 10_000;

    PictureClock(long durationMillis, int left, int width) {
        this.durationMillis = durationMillis;
        this.left = left;
        this.width = width;
        for (Unit each : UNITS) {
            for (int steps : each.steps()) {
                if (durationMillis <= each.millis() * steps * MOST_STEPS) {
                    unit = each;
                    step = steps;
                    return;
                }
            }
        }
    }

    /** Where a moment stands, in the picture's units from the left. */
    int x(long atMillis) {
        long within = Math.min(atMillis, durationMillis);
        return (int) (left + (within * width + durationMillis / 2) / durationMillis);
    }

    /** Moments of the ruled lines. */
    List<Long> lines() {
        List<Long> lines = new ArrayList<>();
        for (long at = 0; at <= durationMillis; at += unit.millis() * step) {
            lines.add(at);
        }
        return lines;
    }

    /** A ruled line's moment in the unit of the axis. */
    String label(long atMillis) {
        return Long.toString(atMillis / unit.millis());
    }

    /** What stands under the axis. */
    String heading() {
        return "time from the start, " + unit.words();
    }
}
