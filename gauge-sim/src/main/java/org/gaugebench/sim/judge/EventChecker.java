package org.gaugebench.sim.judge;

import java.util.Objects;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
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

    EventChecker(Expectation expectation) {
        this.expectation = expectation;
        this.expected = Objects.requireNonNull(expectation.event());
    }

    void look(String gauge, Event event, long value, long atMillis, long truePartsPerMillion) {
        boolean ours =
                gauge.equals(expectation.gauge())
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
                                    truth));
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
                : new ExpectationResult(expectation, Outcome.FAILED, firstMillis, times(), when());
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
