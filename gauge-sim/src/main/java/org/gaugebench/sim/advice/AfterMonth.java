package org.gaugebench.sim.advice;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RunResult;
import org.jspecify.annotations.Nullable;

/**
 * What a run shows after the month: the gauge's wire off for a minute, a full charge, and days of
 * use without a charger.
 *
 * @param leftWhenOff what was really left when its wire was off, in millionths
 * @param shownAfterOff what the owner's gauge showed then; {@link Readout#NOT_KNOWN} for nothing
 * @param betterAfterOff what ours showed then
 * @param leftAtOwnFull what was really in when it set itself to 100 %, in millionths, the lowest of
 *     all; null if it never did
 * @param leftAtBetterFull what was really in when ours did so last, or null
 * @param ownFulls how often it did in the month, where no charge was a full one
 * @param tooMuchAfterFull points by which it shows too much after the full charge, beyond what the
 *     days since have brought
 * @param hoursAtLimitPart part of the time in which its hours stood at the longest that it shows; 0
 *     where it shows none
 */
public record AfterMonth(
        long leftWhenOff,
        long shownAfterOff,
        long betterAfterOff,
        @Nullable Long leftAtOwnFull,
        @Nullable Long leftAtBetterFull,
        int ownFulls,
        double tooMuchAfterFull,
        double hoursAtLimitPart) {

    private static final long DAY_MILLIS = 86_400_000;

    static AfterMonth of(
            RunResult run, Course course, OwnScenario.Plan plan, double restPointsPerDay) {
        Long lowest = null;
        Long better = null;
        int inMonth = 0;
        for (RecordedEvent each : run.events()) {
            if (each.event() != Event.SET_TO_FULL) {
                continue;
            }
            if (!each.gauge().equals("gauge")) {
                better = each.truePartsPerMillion();
                continue;
            }
            lowest =
                    lowest == null
                            ? each.truePartsPerMillion()
                            : Math.min(lowest, each.truePartsPerMillion());
            inMonth += each.atMillis() < plan.days() * DAY_MILLIS ? 1 : 0;
        }
        // Its wire is off in the hour after the month; the charger comes on in the next.
        Course.Hour off = course.hours().get(plan.days() * 24 + 2);
        Course.Hour end = course.hours().get(course.hours().size() - 1);
        boolean ends = end.own() != Readout.NOT_KNOWN;
        double error = ends ? (end.own() - end.truth()) / 1e4 : 0;
        return new AfterMonth(
                off.truth(),
                off.own(),
                off.better(),
                lowest,
                better,
                inMonth,
                ends ? error - restPointsPerDay * plan.restDays() : 0,
                course.hoursAtLimitPart());
    }

    /** Points by which its own 100 % comes too early; 0 if it never sets itself. */
    public double tooEarlyPoints() {
        return leftAtOwnFull == null ? 0 : 100 - leftAtOwnFull / 1e4;
    }
}
