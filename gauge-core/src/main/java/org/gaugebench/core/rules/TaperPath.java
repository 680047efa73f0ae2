package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.RuleReason;

/**
 * The plain way to full (rules F3 to F8): voltage at the threshold, mean current in the taper
 * range, flow seen and not stopped, for the hold time, in which the voltage stays flat.
 */
final class TaperPath {
    /** The taper range reaches a quarter of the taper below zero: a full battery may float. */
    private static final int TAPER_FLOOR_DIVISOR = 4;

    // Parameters.
    private final FullChargeLimits limits;

    // State.
    private final HoldTimer hold = new HoldTimer();
    private final SteadyWatch flatness = new SteadyWatch();

    TaperPath(FullChargeLimits limits) {
        this.limits = limits;
    }

    /**
     * Takes one minute and answers HOLD_RUNNING when it speaks for full, else what stands in the
     * way.
     */
    RuleReason judge(MinuteMean minute, long thresholdMicrovolts, FlowWatch flow) {
        RuleReason obstacle = obstacle(minute, thresholdMicrovolts, flow);
        if (obstacle == RuleReason.HOLD_RUNNING && !isFlat(minute)) {
            hold.reset();
            obstacle = RuleReason.VOLTAGE_NOT_FLAT;
        }
        if (obstacle == RuleReason.HOLD_RUNNING) {
            hold.inside();
        } else {
            hold.outside();
        }
        return obstacle;
    }

    private RuleReason obstacle(MinuteMean minute, long thresholdMicrovolts, FlowWatch flow) {
        if (minute.isDoubtful()) {
            return RuleReason.READING_DOUBTFUL;
        }
        if (minute.lowestMicrovolts() < thresholdMicrovolts) {
            return RuleReason.VOLTAGE_UNDER_THRESHOLD;
        }
        if (flow.stopped()) {
            return RuleReason.FLOW_STOPPED;
        }
        if (!flow.flowSeen()) {
            return RuleReason.NO_FLOW;
        }
        if (minute.meanMicroamps() > limits.taperMicroamps) {
            return RuleReason.CURRENT_ABOVE_TAPER;
        }
        if (minute.meanMicroamps() < -limits.taperMicroamps / TAPER_FLOOR_DIVISOR) {
            return RuleReason.CURRENT_BELOW_TAPER;
        }
        return RuleReason.HOLD_RUNNING;
    }

    /** Whether the mean voltages of the minutes that were held lie within the flatness. */
    private boolean isFlat(MinuteMean minute) {
        if (limits.flatnessMicrovolts == 0) {
            return true;
        }
        if (hold.heldMinutes() == 0) {
            flatness.reset();
        }
        int before = flatness.minutes();
        flatness.addMinute(minute.meanMicrovolts(), limits.flatnessMicrovolts);
        return flatness.minutes() == before + 1;
    }

    void reset() {
        hold.reset();
        flatness.reset();
    }

    int heldMinutes() {
        return hold.heldMinutes();
    }
}
