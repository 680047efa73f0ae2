package org.gaugebench.sim.judge;

import java.util.Objects;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Expectation;
import org.gaugebench.sim.scenario.Expectation.Comparison;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.jspecify.annotations.Nullable;

/**
 * Holds one expectation of a reading against a run. The first failure decides; while it holds, the
 * moment nearest to failing is kept, so that a report can say how near it was.
 */
final class ExpectationChecker {
    private final Expectation expectation;
    private final @Nullable Reading reading;
    private boolean evaluated;
    private boolean failed;
    private long decidingMillis = -1;
    private long nearestMargin = Long.MAX_VALUE;
    private boolean cameTrue;
    private boolean wasTrue;
    private int riseCount;
    private String found = "";
    private String detail = "";

    ExpectationChecker(Expectation expectation) {
        this.expectation = expectation;
        this.reading = expectation.reading();
    }

    /**
     * Whether this moment counts. Another expectation's own moment does not count for a claim over
     * minutes: else one line of a file could change the outcome of another.
     */
    private boolean counts(long timeMillis, boolean atWholeMinute) {
        if (expectation.kind() == Kind.AT) {
            return !evaluated && timeMillis >= expectation.fromMillis();
        }
        return atWholeMinute
                && timeMillis >= expectation.fromMillis()
                && timeMillis <= expectation.toMillis();
    }

    /** Judges this moment if it counts; answers whether the claim failed at it. */
    boolean look(Rig rig, Lane lane, boolean atWholeMinute) {
        if (failed || cameTrue || !counts(rig.timeMillis(), atWholeMinute)) {
            return false;
        }
        Readout readout = lane.read();
        long shown = shown(lane, readout, rig);
        long truth = reading != null && needsTruth() ? Readings.truth(reading, rig) : 0;
        long margin = margin(shown, truth, readout);
        evaluated = true;
        boolean decided = judge(margin >= 0);
        // A claim that must hold is nearest to failing at its smallest margin, one that must come
        // true, or must not, is nearest to it at its largest.
        boolean nearer =
                holdsThroughout()
                        ? margin < nearestMargin
                        : found.isEmpty() || margin > nearestMargin;
        if (nearer || decided) {
            nearestMargin = margin;
            decidingMillis = rig.timeMillis();
            found = foundText(shown, truth, readout);
        }
        if (failed) {
            detail = MomentText.of(rig, lane, readout);
        }
        return failed;
    }

    private boolean holdsThroughout() {
        return expectation.kind() == Kind.AT || expectation.kind() == Kind.THROUGHOUT;
    }

    /** Takes in whether the claim is true at this moment; answers whether that decides. */
    private boolean judge(boolean isTrue) {
        switch (expectation.kind()) {
            case NEVER -> failed = isTrue;
            case BY -> cameTrue = isTrue;
            case ONCE -> {
                boolean rises = isTrue && !wasTrue;
                wasTrue = isTrue;
                riseCount += rises ? 1 : 0;
                failed = riseCount > 1;
                return rises;
            }
            default -> failed = !isTrue;
        }
        return failed || cameTrue;
    }

    private long shown(Lane lane, Readout readout, Rig rig) {
        return reading == null
                ? lane.inspect().get(Objects.requireNonNull(expectation.register()))
                : Readings.shown(reading, lane, readout, rig);
    }

    /** The truth of a time is found by running ahead: it is asked for only where it is judged. */
    private boolean needsTruth() {
        return expectation.comparison() == Comparison.WITHIN_OF_TRUTH
                || expectation.comparison() == Comparison.BAND_HOLDS_TRUTH;
    }

    /** How far from failing, in the reading's unit; below 0 is failed. */
    private long margin(long shown, long truth, Readout readout) {
        Comparison comparison = expectation.comparison();
        if (comparison == Comparison.NOT_KNOWN) {
            return shown == Readings.NONE ? 0 : -1;
        }
        boolean ofBand = comparison == Comparison.BAND_HOLDS_TRUTH;
        boolean unknown = reading != null && shown == Readings.NONE;
        if (unknown || (ofBand && readout.bandUnknown)) {
            return -Long.MAX_VALUE;
        }
        long value = expectation.value();
        return switch (comparison) {
            // "More than 99 h" is true of every longer time.
            case WITHIN_OF_TRUTH ->
                    saysMoreThan(readout) && truth >= shown
                            ? expectation.tolerance()
                            : expectation.tolerance() - Math.abs(shown - truth);
            case BAND_HOLDS_TRUTH ->
                    Math.min(
                            truth - readout.lowerEdgePartsPerMillion,
                            readout.upperEdgePartsPerMillion - truth);
            case WITHIN_OF_VALUE -> expectation.tolerance() - Math.abs(shown - value);
            case AT_LEAST -> shown - value;
            case AT_MOST -> value - shown;
            case EXACTLY -> shown == value ? 0 : -Math.abs(shown - value);
            case MORE_THAN ->
                    readout.timeToEmptyState == EstimateState.MORE_THAN && shown == value ? 0 : -1;
            case NOT_KNOWN -> throw new IllegalStateException("judged above");
        };
    }

    private boolean saysMoreThan(Readout readout) {
        return reading == Reading.TIME_TO_EMPTY
                && readout.timeToEmptyState == EstimateState.MORE_THAN;
    }

    private String foundText(long shown, long truth, Readout readout) {
        if (reading == null) {
            return shown + " " + Objects.requireNonNull(expectation.register()).unit();
        }
        String text = shown == Readings.NONE ? "not known" : Figures.of(reading, shown);
        if (saysMoreThan(readout)) {
            text = "more than " + text;
        }
        boolean ofBand = expectation.comparison() == Comparison.BAND_HOLDS_TRUTH;
        if (ofBand) {
            text += readout.bandUnknown ? ", band unknown" : ", " + Figures.edges(readout);
        }
        if (needsTruth()) {
            text += " (true " + Figures.of(reading, truth) + ")";
        }
        return text;
    }

    ExpectationResult result(long durationMillis) {
        boolean cutOff = expectation.kind() != Kind.AT && expectation.toMillis() > durationMillis;
        if (!evaluated || (cutOff && !failed && !cameTrue)) {
            return new ExpectationResult(
                    expectation,
                    Outcome.NEVER_EVALUATED,
                    -1,
                    "never evaluated",
                    whyNeverEvaluated(durationMillis));
        }
        boolean missing =
                (expectation.kind() == Kind.BY && !cameTrue)
                        || (expectation.kind() == Kind.ONCE && riseCount == 0);
        if (missing) {
            return new ExpectationResult(
                    expectation,
                    Outcome.FAILED,
                    decidingMillis,
                    found,
                    "it never came true; at %s it was nearest"
                            .formatted(Figures.moment(decidingMillis)));
        }
        return new ExpectationResult(
                expectation, failed ? Outcome.FAILED : Outcome.HELD, decidingMillis, found, detail);
    }

    private String whyNeverEvaluated(long durationMillis) {
        if (expectation.fromMillis() > durationMillis) {
            return "its time lies outside the run";
        }
        return expectation.toMillis() > durationMillis
                ? "the run ends before its window does"
                : "no whole minute of the run lies in its window";
    }
}
