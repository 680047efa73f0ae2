package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.sim.explain.Explanation;
import org.gaugebench.sim.explain.Section;
import org.gaugebench.sim.explain.Step;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.scenario.Scenario;

/** An explained moment as a page: a plain sentence first, then every step. */
public final class ExplanationText {
    private static final int LABEL_WIDTH = 30;

    private ExplanationText() {}

    /**
     * Writes the page.
     *
     * @param scenario what was run
     * @param seed with which seed
     * @param explanation what was found
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(Scenario scenario, long seed, Explanation explanation) {
        Page page = new Page();
        page.paragraph(0, explanation.sentence());
        page.gap()
                .paragraph(
                        0,
                        "At %s of %s"
                                .formatted(
                                        Figures.moment(explanation.atMillis()), scenario.title()))
                .paragraph(0, scenario.name() + ", seed " + seed)
                .paragraph(0, explanation.situation());
        for (Section section : explanation.sections()) {
            page.gap().paragraph(0, section.title() + " (" + section.where() + ")");
            for (Step step : section.steps()) {
                page.labelled(2, LABEL_WIDTH, step.label(), words(step));
            }
        }
        page.gap();
        legend(page, explanation);
        return page.toString();
    }

    private static String words(Step step) {
        StringBuilder words = new StringBuilder();
        if (!step.calculation().isEmpty()) {
            String joint = step.isFigure() ? " = " : ": ";
            words.append(step.calculation()).append(joint);
        }
        words.append(step.result());
        if (!step.unit().isEmpty()) {
            words.append(' ').append(step.unit());
        }
        if (step.contradicts()) {
            words.append(" [%s holds %s]".formatted(step.register(), step.held()));
        } else if (!step.register().isEmpty()) {
            words.append(" [%s]".formatted(step.register()));
        }
        return words.toString();
    }

    private static void legend(Page page, Explanation explanation) {
        if (explanation.sections().isEmpty()) {
            return;
        }
        page.paragraph(
                0,
                "How to read it: x times; / divided, cut off toward zero; half(a / b) to the"
                        + " nearest, halves away from zero; up(a / b) rounded up; >> n divided by"
                        + " 2^n, rounded down; mod the remainder; root() rounded up. A name in"
                        + " brackets is the core's register that holds the same figure.");
        long wrong = explanation.contradictions();
        page.paragraph(
                0,
                wrong == 0
                        ? "Every figure agrees with the core's registers."
                        : String.format(
                                Locale.ROOT,
                                "%d %s not what the core's register holds: a defect of this page"
                                        + " or of the core.",
                                wrong,
                                wrong == 1 ? "figure is" : "figures are"));
    }
}
