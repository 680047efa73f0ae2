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

/**
 * Holds one expectation of a reading against a run. The first failure decides; while it holds, the
 * moment nearest to failing is kept, so that a report can say how near it was.
 */
final class ExpectationChecker {
    private final Expectation expectation;
    private final Reading reading;
    private boolean evaluated;
    private boolean failed;
    private long decidingMillis = -1;
    private long smallestMargin = Long.MAX_VALUE;
    private String found = "";
    private String detail = "";

    ExpectationChecker(Expectation expectation) {
        this.expectation = expectation;
        this.reading = Objects.requireNonNull(expectation.reading());
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

    void look(Rig rig, Lane lane, boolean atWholeMinute) {
        if (failed || !counts(rig.timeMillis(), atWholeMinute)) {
            return;
        }
        Readout readout = lane.read();
        long shown = Readings.shown(reading, lane, readout, rig.truth());
        long truth = Readings.truth(reading, rig.truth());
        long margin = margin(shown, truth, readout);
        evaluated = true;
        if (margin < smallestMargin) {
            smallestMargin = margin;
            decidingMillis = rig.timeMillis();
            found = foundText(shown, truth, readout);
            if (margin < 0) {
                failed = true;
                detail = MomentText.of(rig, lane, readout);
            }
        }
    }

    /** How far from failing, in the reading's unit; below 0 is failed. */
    private long margin(long shown, long truth, Readout readout) {
        Comparison comparison = expectation.comparison();
        if (comparison == Comparison.NOT_KNOWN) {
            return shown == Readings.NONE ? 0 : -1;
        }
        boolean ofBand = comparison == Comparison.BAND_HOLDS_TRUTH;
        if (shown == Readings.NONE || (ofBand && readout.bandUnknown)) {
            return -Long.MAX_VALUE;
        }
        long value = expectation.value();
        return switch (comparison) {
            case WITHIN_OF_TRUTH ->
                    truth == Readings.NONE
                            ? -Long.MAX_VALUE
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

    private String foundText(long shown, long truth, Readout readout) {
        String text = shown == Readings.NONE ? "not known" : Figures.of(reading, shown);
        if (reading == Reading.TIME_TO_EMPTY
                && readout.timeToEmptyState == EstimateState.MORE_THAN) {
            text = "more than " + text;
        }
        boolean ofBand = expectation.comparison() == Comparison.BAND_HOLDS_TRUTH;
        if (ofBand) {
            text += readout.bandUnknown ? ", band unknown" : ", " + Figures.edges(readout);
        }
        if (ofBand || expectation.comparison() == Comparison.WITHIN_OF_TRUTH) {
            text +=
                    " (true "
                            + (truth == Readings.NONE ? "none" : Figures.of(reading, truth))
                            + ")";
        }
        return text;
    }

    ExpectationResult result(long durationMillis) {
        boolean cutOff =
                expectation.kind() == Kind.THROUGHOUT && expectation.toMillis() > durationMillis;
        if (!evaluated || (cutOff && !failed)) {
            return new ExpectationResult(
                    expectation,
                    Outcome.NEVER_EVALUATED,
                    -1,
                    "never evaluated",
                    whyNeverEvaluated(durationMillis));
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
