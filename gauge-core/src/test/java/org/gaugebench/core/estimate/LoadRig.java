package org.gaugebench.core.estimate;

import java.util.function.LongToIntFunction;

/**
 * A load by the second, with 60 Ah always left, seen by four ways of smoothing. The comparison is
 * in double; only the filter under test is in integers.
 */
final class LoadRig {
    static final double AMP_HOURS = 60;
    private static final long CHARGE = 60 * 3_600_000_000_000L;
    private static final int SECOND_MILLIS = 1_000;
    private static final int LONGEST_MINUTES = 60_000;

    private final LongToIntFunction loadMicroamps;
    private final LoadFilter filter = new LoadFilter(100 * 3_600_000_000_000L, 30);
    private final TimeToEmpty timeToEmpty =
            new TimeToEmpty(10_000, LONGEST_MINUTES, 0, RateModel.none());
    private final EstimateInput input = new EstimateInput();
    private final double[] window = new double[1_800];

    private long second;
    private double minuteSum;
    private double windowSum;
    private double poleAmps;
    private double instantAmps;

    LoadRig(LongToIntFunction loadMicroamps) {
        this.loadMicroamps = loadMicroamps;
        input.known = true;
        input.chargeNanocoulombs = CHARGE;
        input.lowNanocoulombs = CHARGE;
        input.highNanocoulombs = CHARGE;
    }

    /** Runs to this second of the load's own time. */
    LoadRig runTo(long untilSecond) {
        while (second < untilSecond) {
            int microamps = -loadMicroamps.applyAsInt(second);
            instantAmps = -microamps / 1e6;
            poleAmps += second == 0 ? instantAmps : (instantAmps - poleAmps) / 180;
            int slot = (int) (second % window.length);
            windowSum += instantAmps - window[slot];
            window[slot] = instantAmps;
            minuteSum += microamps;
            input.presentMicroamps = microamps;
            boolean news = filter.addStretch(microamps, SECOND_MILLIS);
            second++;
            if (second % 60 == 0) {
                filter.closeMinute((int) (minuteSum / 60));
                minuteSum = 0;
                news = true;
            }
            if (news) {
                timeToEmpty.update(input, filter);
            }
        }
        return this;
    }

    LoadFilter filter() {
        return filter;
    }

    double instantHours() {
        return AMP_HOURS / instantAmps;
    }

    double poleHours() {
        return AMP_HOURS / poleAmps;
    }

    double windowHours() {
        return AMP_HOURS / (windowSum / Math.min(second, window.length));
    }

    double hours() {
        return timeToEmpty.minutes() / 60.0;
    }
}
