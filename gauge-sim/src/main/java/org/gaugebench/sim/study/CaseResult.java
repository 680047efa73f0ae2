package org.gaugebench.sim.study;

import java.util.List;

/**
 * What came of one combination of what varies.
 *
 * @param name as in the study; empty where nothing varies
 * @param durationMillis of the run
 * @param rows of all devices, in order of their numbers
 * @param moments of the band
 * @param causes each tolerance in file order, and chance last
 * @param block devices in one block
 * @param tolerance numerical tolerance of the limits, in the reading's unit
 * @param knownTo how well they are known: twice the standard error of the worst known figure
 * @param worst the device whose error was farthest from zero; null if no gauge knew anything
 * @param inside devices that keep what is expected; of none where nothing is
 */
public record CaseResult(
        String name,
        long durationMillis,
        List<DeviceRow> rows,
        List<Moment> moments,
        List<Cause> causes,
        int block,
        double tolerance,
        double knownTo,
        @org.jspecify.annotations.Nullable DeviceRow worst,
        Doubt inside) {
    /** Whether the limits are known to the tolerance. */
    public boolean isStable() {
        return knownTo <= tolerance;
    }

    /** All devices at the end of the run. */
    public Moment end() {
        return moments.get(moments.size() - 1);
    }

    /** Moments at which first-order limits got an answer. */
    public long count(Validation.Answer answer) {
        return moments.stream().filter(it -> it.validation().answer() == answer).count();
    }
}
