package org.gaugebench.sim.report;

import java.math.RoundingMode;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.StudyResult;
import org.gaugebench.sim.study.Validation;
import org.gaugebench.sim.units.QuantityFormat;

/** The sentences of a study, the same in text, on pages and in pictures. */
final class StudyWords {
    private final StudyResult result;
    private final StudySpec spec;
    private final CaseResult each;
    private final StudyFigures figures;

    StudyWords(StudyResult result, CaseResult each) {
        this.result = result;
        this.spec = result.spec();
        this.each = each;
        this.figures = new StudyFigures(spec.unit(), each.tolerance());
    }

    StudyFigures figures() {
        return figures;
    }

    /** One word that comes first. */
    String answer() {
        return switch (result.answer(each)) {
            case YES -> "YES";
            case NO -> "NO";
            case NOT_DECIDED -> "NOT DECIDED";
            case NOTHING_ASKED -> "nothing expected";
        };
    }

    /** What follows for the claim, and why. */
    String claim() {
        if (!spec.claim().isMade()) {
            return "the study has no 'expect', so there is no verdict";
        }
        String share =
                QuantityFormat.format(
                        spec.claim().sharePartsPerMillion(),
                        org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION);
        String sure =
                "%s to %s %%"
                        .formatted(
                                StudyFigures.devices(each.inside().lower(), RoundingMode.DOWN),
                                StudyFigures.devices(each.inside().upper(), RoundingMode.UP));
        return "%s of %s devices stay within ±%s at every whole minute; so of all devices it is %s"
                        .formatted(each.inside().inside(), each.inside().of(), within(), sure)
                + " (95 % sure), and "
                + share
                + " are asked for"
                + (spec.claim().because().isEmpty()
                        ? ""
                        : " (" + Page.clean(spec.claim().because()) + ")");
    }

    private String within() {
        return spec.unit() == org.gaugebench.sim.units.RecordUnit.MILLICELSIUS
                ? QuantityFormat.format(
                        spec.claim().within(), org.gaugebench.sim.units.RecordUnit.MILLIKELVIN)
                : QuantityFormat.format(spec.claim().within(), spec.unit());
    }

    /** How many devices there were and how well the limits are known. */
    String convergence() {
        int devices = each.rows().size();
        String known =
                "%s devices, in blocks of %s; the limits are known to %s"
                        .formatted(devices, each.block(), figures.of(each.knownTo()));
        if (each.isStable()) {
            return known
                    + ", %s was asked for (JCGM 101, 7.9)".formatted(figures.of(each.tolerance()));
        }
        return known
                + ", not to the %s that are asked for (JCGM 101, 7.9): draw more devices"
                        .formatted(figures.of(each.tolerance()));
    }

    /** Whether first-order limits may be used at the end, and how often not. */
    String validation() {
        Validation end = each.end().validation();
        String gaps =
                "the lower one lies %s and the upper one %s from the drawn one, and %s is allowed"
                        .formatted(
                                figures.of(end.lowerGap()),
                                figures.of(end.upperGap()),
                                figures.of(end.tolerance()));
        String verdict =
                switch (end.answer()) {
                    case AGREES -> "First-order limits may be used here: " + gaps;
                    case DIFFERS -> "First-order limits are not to be used here: " + gaps;
                    case NOT_DECIDED ->
                            "Whether first-order limits may be used is not decided with so few"
                                    + " devices: "
                                    + gaps;
                };
        return verdict
                + " (JCGM 101, clause 8). At %s of %s moments they are not to be used, at %s it is"
                        .formatted(
                                each.count(Validation.Answer.DIFFERS),
                                each.moments().size(),
                                each.count(Validation.Answer.NOT_DECIDED))
                + " not decided.";
    }
}
