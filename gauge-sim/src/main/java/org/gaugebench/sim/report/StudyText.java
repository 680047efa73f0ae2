package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Cause;
import org.gaugebench.sim.study.DeviceRow;
import org.gaugebench.sim.study.Moment;
import org.gaugebench.sim.study.StudyResult;
import org.gaugebench.sim.units.QuantityFormat;

/** A study as a page of text: the answer first, then what it rests on. */
public final class StudyText {
    private static final int BAND_ROWS = 10;
    private static final int LABEL = 28;

    private final StudyResult result;
    private final StudySpec spec;
    private final Page page = new Page();

    private StudyText(StudyResult result) {
        this.result = result;
        this.spec = result.spec();
    }

    /** Writes the page. */
    public static String of(StudyResult result) {
        return new StudyText(result).write();
    }

    private String write() {
        page.paragraph(0, spec.title());
        page.paragraph(2, "%s, seed %s".formatted(spec.file(), spec.seed()));
        for (CaseResult each : result.cases()) {
            page.gap();
            if (!each.name().isEmpty()) {
                page.line("[" + Page.clean(each.name()) + "]");
            }
            write(each);
        }
        return page.toString();
    }

    private void write(CaseResult each) {
        StudyWords words = new StudyWords(result, each);
        page.paragraph(0, words.answer() + ": " + words.claim() + ".");
        limits(each, words);
        page.paragraph(2, words.convergence() + ".");
        page.paragraph(2, words.validation());
        causes(each, words.figures());
        band(each, words.figures());
        worst(each, words.figures());
    }

    private void limits(CaseResult each, StudyWords words) {
        StudyFigures figures = words.figures();
        Moment end = each.end();
        page.gap();
        page.paragraph(
                0,
                "%s at the end, %s"
                        .formatted(StudyFigures.what(spec), Figures.moment(end.atMillis())));
        row("", "first order", "drawn");
        row("mean", figures.of(end.estimate()), figures.of(end.sample().mean()));
        row(
                "standard uncertainty",
                figures.of(end.uncertainty()),
                figures.of(end.sample().standardUncertainty()));
        String percent = coverage();
        row(
                percent + " limits, lower",
                figures.of(end.firstLimits().lower()),
                figures.of(end.limits().lower()));
        row(
                percent + " limits, upper",
                figures.of(end.firstLimits().upper()),
                figures.of(end.limits().upper()));
        int unknown = each.rows().size() - end.sample().count();
        if (unknown > 0) {
            page.line("  gauges that know nothing: " + unknown);
        }
    }

    private String coverage() {
        return QuantityFormat.format(
                spec.coveragePartsPerMillion(),
                org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION);
    }

    private void row(String label, String first, String drawn) {
        page.line(padded("  " + label, LABEL) + before(first, 14) + before(drawn, 14));
    }

    private void causes(CaseResult each, StudyFigures figures) {
        page.gap();
        page.line("where the spread comes from, at the end");
        page.line(
                padded("  cause", 31)
                        + before("one u does", 12)
                        + before("share:", 9)
                        + before("drawn", 8)
                        + before("alone at its ends", 19));
        int last = each.moments().size() - 1;
        for (Cause cause : each.causes()) {
            String name = Page.clean(cause.name());
            if (name.length() > 28) {
                page.line("  " + name);
                name = "";
            }
            String ends =
                    cause.isNoise()
                            ? ""
                            : figures.number(cause.atLower())
                                    + " .. "
                                    + figures.number(cause.atUpper());
            page.line(
                    padded("  " + name, 31)
                            + before(figures.of(cause.part()), 12)
                            + before(StudyFigures.share(cause.firstShare()[last]), 9)
                            + before(StudyFigures.share(cause.drawnShare()[last]), 8)
                            + (ends.isEmpty() ? "" : before(ends, 19)));
        }
        page.paragraph(
                2,
                "One u: one standard uncertainty. First share: first order; drawn share: of the"
                    + " drawn devices, straight or not. What is missing to the whole of those is"
                    + " chance, and causes that matter only together.");
    }

    private void band(CaseResult each, StudyFigures figures) {
        page.gap();
        page.line("drawn devices over time, " + figures.of(0).replaceFirst(".* ", ""));
        page.line(
                padded("  time", 18)
                        + before("smallest", 10)
                        + before("lower", 10)
                        + before("median", 10)
                        + before("upper", 10)
                        + before("largest", 10));
        List<Moment> moments = each.moments();
        int rows = Math.min(BAND_ROWS, moments.size());
        for (int i = 1; i <= rows; i++) {
            Moment moment = moments.get(moments.size() * i / rows - 1);
            StringBuilder line = new StringBuilder();
            line.append(padded("  " + Figures.moment(moment.atMillis()), 18));
            for (int place :
                    new int[] {
                        Moment.SMALLEST, Moment.LOWER, Moment.MEDIAN, Moment.UPPER, Moment.LARGEST
                    }) {
                line.append(before(figures.number(moment.percentiles()[place]), 10));
            }
            page.line(line.toString());
        }
    }

    private void worst(CaseResult each, StudyFigures figures) {
        DeviceRow worst = each.worst();
        page.gap();
        if (worst == null) {
            page.line("no gauge of any device ever knew anything");
            return;
        }
        page.paragraph(
                0,
                "worst device: number %s, %s at %s, with"
                        .formatted(
                                worst.number(),
                                figures.of((double) worst.worst()),
                                Figures.moment(worst.worstAtMillis())));
        for (int i = 0; i < worst.steps().length; i++) {
            Tolerance it = spec.tolerances().get(i);
            page.line(
                    "  "
                            + it.address()
                            + ": "
                            + QuantityFormat.format(worst.steps()[i], it.unit()));
        }
        page.paragraph(
                2,
                "Run it again: 'study %s --device %s%s > device.yaml', then 'run device.yaml'"
                                .formatted(
                                        spec.file(),
                                        worst.number(),
                                        each.name().isEmpty()
                                                ? ""
                                                : " --variant '" + each.name() + "'")
                        + " in the scenario's folder.");
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(1, width - text.length()));
    }

    private static String before(String text, int width) {
        return " ".repeat(Math.max(1, width - text.length())) + text;
    }
}
