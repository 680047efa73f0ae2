package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SignCheck;
import org.gaugebench.sim.rig.ReplayResult;

/**
 * Everything the reports of a replay tell.
 *
 * @param log the log
 * @param result what the gauge counted
 * @param sign whether the current's sign fits the voltage
 * @param assumed what the replay was told or assumed, in order
 * @param notes what was recognised in the log
 */
public record ReplayOutcome(
        MeasuredLog log,
        ReplayResult result,
        SignCheck sign,
        List<Assumption> assumed,
        List<String> notes) {
    /** Two counters that run against each other sum to less than this part of either. */
    private static final double OPPOSITE_PART = 0.02;

    /**
     * One setting of the replay.
     *
     * @param key the option without its dashes
     * @param value as written
     * @param isDefault whether nobody asked for it
     */
    public record Assumption(String key, String value, boolean isDefault) {}

    /** Counted less what the log's own counter moved by, in ampere-hours. */
    public double differenceAmpHours() {
        return result.countedAmpHours() - log.counterMovedAmpHours();
    }

    /** Whether the log's own counter seems to run the other way round than its current. */
    public boolean counterRunsOpposite() {
        double moved = log.counterMovedAmpHours();
        double counted = result.countedAmpHours();
        return log.hasCounter()
                && Math.abs(moved) > OPPOSITE_PART * result.throughputAmpHours()
                && Math.abs(counted + moved) < OPPOSITE_PART * Math.abs(moved);
    }
}
