package org.gaugebench.sim.judge;

import java.util.Objects;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Expectation;

/**
 * Holds one expectation of a number of events against a run. It counts as the events come, so that
 * a gauge that chatters past the recorder's memory is still counted to the last event.
 */
final class EventChecker {
    private final Expectation expectation;
    private final Event expected;
    private long count;
    private long firstMillis = -1;
    private long lastMillis = -1;
    private long tooEarlyMillis = -1;
    private long tooEarlyPartsPerMillion;
    private String tellingMoment = "";
    private long tellingMillis = -1;
    private boolean closed;

    EventChecker(Expectation expectation) {
        this.expectation = expectation;
        this.expected = Objects.requireNonNull(expectation.event());
    }

    void look(Rig rig, Lane lane, Event event, long value, long truePartsPerMillion) {
        long atMillis = rig.timeMillis();
        boolean ours =
                lane.name().equals(expectation.gauge())
                        && event == expected
                        && isFault(value)
                        && atMillis >= expectation.fromMillis()
                        && atMillis <= expectation.toMillis();
        if (!ours) {
            return;
        }
        count++;
        firstMillis = firstMillis < 0 ? atMillis : firstMillis;
        lastMillis = atMillis;
        if (tooEarlyMillis < 0
                && truePartsPerMillion < expectation.trueStateAtLeastPartsPerMillion()) {
            tooEarlyMillis = atMillis;
            tooEarlyPartsPerMillion = truePartsPerMillion;
            tell(rig, lane);
        }
        // Of too many events the first that is one too many tells most; of too few, the first.
        boolean tells = count == 1 || count == expectation.value() + 1;
        if (tells && tooEarlyMillis < 0) {
            tell(rig, lane);
        }
    }

    private void tell(Rig rig, Lane lane) {
        tellingMillis = rig.timeMillis();
        tellingMoment = MomentText.of(rig, lane, lane.read());
    }

    /** The rig stands still: what did not come until the window closed is told from there. */
    void look(Rig rig, Lane lane) {
        long closes = Math.min(expectation.toMillis(), rig.scenario().durationMillis());
        boolean ours = lane.name().equals(expectation.gauge());
        if (ours && !closed && rig.timeMillis() >= closes) {
            closed = true;
            if (count == 0) {
                tell(rig, lane);
            }
        }
    }

    private boolean isFault(long number) {
        Fault fault = expectation.fault();
        return fault == null || fault.ordinal() == number;
    }

    ExpectationResult result(long durationMillis) {
        if (expectation.fromMillis() > durationMillis) {
            return new ExpectationResult(
                    expectation,
                    Outcome.NEVER_EVALUATED,
                    -1,
                    "never evaluated",
                    "its time lies outside the run");
        }
        if (tooEarlyMillis >= 0) {
            String truth = Figures.percent(tooEarlyPartsPerMillion);
            return new ExpectationResult(
                    expectation,
                    Outcome.FAILED,
                    tooEarlyMillis,
                    "true " + truth,
                    "at %s %s %s while the true state of charge was %s"
                                    .formatted(
                                            Figures.moment(tooEarlyMillis),
                                            expectation.gauge(),
                                            expected.sentence(),
                                            truth)
                            + told());
        }
        boolean settled =
                expectation.comparison() == Expectation.Comparison.AT_LEAST
                        && expectation.times().lastToMillis() == Long.MAX_VALUE;
        if (isCountRight() && !settled && expectation.toMillis() > durationMillis) {
            return new ExpectationResult(
                    expectation,
                    Outcome.NEVER_EVALUATED,
                    -1,
                    "never evaluated",
                    "the run ends before its window does");
        }
        String misplaced = misplaced();
        if (isCountRight() && !misplaced.isEmpty()) {
            return new ExpectationResult(
                    expectation, Outcome.FAILED, firstMillis, misplaced, when());
        }
        return isCountRight()
                ? new ExpectationResult(expectation, Outcome.HELD, firstMillis, times(), "")
                : new ExpectationResult(
                        expectation, Outcome.FAILED, tellingMillis, times(), when() + told());
    }

    private String told() {
        return tellingMoment.isEmpty() ? "" : "; " + tellingMoment;
    }

    /** What came at the wrong time, or an empty text. */
    private String misplaced() {
        Expectation.Times times = expectation.times();
        if (count == 0) {
            return "";
        }
        if (firstMillis < times.firstFromMillis() || firstMillis > times.firstToMillis()) {
            return "the first at " + Figures.moment(firstMillis);
        }
        if (lastMillis < times.lastFromMillis() || lastMillis > times.lastToMillis()) {
            return "the last at " + Figures.moment(lastMillis);
        }
        return "";
    }

    private boolean isCountRight() {
        return switch (expectation.comparison()) {
            case AT_LEAST -> count >= expectation.value();
            case AT_MOST -> count <= expectation.value();
            default -> count == expectation.value();
        };
    }

    private String times() {
        return count == 0 ? "never" : count == 1 ? "once" : count + " times";
    }

    private String when() {
        String what = expectation.gauge() + " " + expected.sentence() + " " + times();
        if (count == 0) {
            return what;
        }
        String first = " at " + Figures.moment(firstMillis);
        return count == 1
                ? what + "," + first
                : what + ", first" + first + ", last at " + Figures.moment(lastMillis);
    }
}
