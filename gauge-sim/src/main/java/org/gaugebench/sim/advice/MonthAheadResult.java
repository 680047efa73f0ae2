package org.gaugebench.sim.advice;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How long a count can be believed after a full charge.
 *
 * @param daysWithinTen whole days within 10 points, at most {@link #MOST_DAYS}
 * @param daysWithinFive the same within 5 points
 * @param tooHighPerDay points by which it shows more than there is, for each day
 * @param eitherWayPerDay points by which it may be off either way, for each day
 * @param drifts the reasons, the largest first; none of zero
 * @param scenario the system as a scenario, for those who want it
 * @param course what a run of that scenario gives over a month; empty if its loads empty the
 *     battery
 * @param gauge what the gauge that was run does, a sentence each
 * @param after what the run shows after the month
 * @param startPoints points by which it shows too much right after a full charge
 * @param isPutRight whether a full charge puts the figure right again
 * @param leastDaysWithinTen the same as {@code daysWithinTen} with a bad answer in place of each
 *     that is not known; equal to it where all that matters is known
 * @param assumed what was taken where nothing was told
 * @param findOut what the owner can find out to narrow the answer
 */
public record MonthAheadResult(
        int daysWithinTen,
        int daysWithinFive,
        double tooHighPerDay,
        double eitherWayPerDay,
        List<Drift> drifts,
        String scenario,
        List<Course.Hour> course,
        List<String> gauge,
        AfterMonth after,
        double startPoints,
        boolean isPutRight,
        int leastDaysWithinTen,
        List<String> assumed,
        List<String> findOut) {

    /** Beyond that nobody asks. */
    public static final int MOST_DAYS = 365;

    MonthAheadResult withLeast(int days) {
        return new MonthAheadResult(
                daysWithinTen,
                daysWithinFive,
                tooHighPerDay,
                eitherWayPerDay,
                drifts,
                scenario,
                course,
                gauge,
                after,
                startPoints,
                isPutRight,
                days,
                assumed,
                findOut);
    }

    /** The last whole day of the run that the ten points allow; null without a run. */
    public Course.@Nullable Hour lastGoodDay() {
        int day = Math.max(1, daysWithinTen);
        int hour = Math.min(day * 24, (course.size() - 1) / 24 * 24);
        return course.isEmpty() ? null : course.get(hour);
    }
}
