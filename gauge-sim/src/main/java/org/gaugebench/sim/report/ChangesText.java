package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.sim.advice.ChangesResult;

/** What to redo after a change, for people: the answer first, the evidence below. */
public final class ChangesText {
    private static final int LABEL = 62;

    private ChangesText() {}

    /** Lines of at most {@value Page#WIDTH} columns. */
    public static String of(ChangesResult result) {
        Page page = new Page().paragraph(0, result.answer());
        page.gap().line("How far the figure can be believed until then");
        for (ChangesResult.Figure each : result.figures()) {
            page.labelled(2, LABEL, each.words(), value(each));
        }
        page.gap().line("What to redo, in this order");
        int number = 1;
        for (String each : result.redo()) {
            page.labelled(2, 3, number + ".", each);
            number++;
        }
        page.gap().line("What was assumed");
        for (String each : result.assumed()) {
            page.labelled(2, 2, "-", each);
        }
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
        return page.toString();
    }

    /** A figure as it is printed: no more places than it is worth. */
    public static String value(ChangesResult.Figure figure) {
        double value = figure.value();
        String pattern =
                switch (figure.unit()) {
                    case "V" -> "%.2f %s";
                    case "days" -> value < 10 && value % 1 != 0 ? "%.1f %s" : "%.0f %s";
                    default -> "%.1f %s";
                };
        return String.format(Locale.ROOT, pattern, value == 0 ? 0.0 : value, figure.unit());
    }
}
