package org.gaugebench.sim.report;

import org.gaugebench.sim.advice.MeterVerdict;
import org.gaugebench.sim.logs.MeterCheck;

/** What measured figures mean, for people: the answer first, each check below. */
public final class VerdictText {
    private static final int LABEL = 28;

    private VerdictText() {}

    /** Lines of at most {@value Page#WIDTH} columns. */
    public static String of(MeterVerdict verdict) {
        Page page = new Page().paragraph(0, verdict.answer());
        page.gap().line("Check by check");
        for (MeterVerdict.Line each : verdict.lines()) {
            page.labelled(
                    2,
                    LABEL,
                    each.check().words() + ": " + each.word().words(),
                    each.found() + ". Good: " + each.why() + ".");
            if (!each.todo().isEmpty()) {
                page.labelled(2 + LABEL, 4, "Do:", each.todo() + ".");
            }
        }
        if (!verdict.missing().isEmpty()) {
            page.gap().line("Not done yet");
            for (MeterCheck each : verdict.missing()) {
                page.labelled(2, 2, "-", each.words() + " (" + each.key() + ")");
            }
        }
        if (!verdict.assumed().isEmpty()) {
            page.gap().line("What was assumed");
            verdict.assumed().forEach(each -> page.labelled(2, 2, "-", each));
        }
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
        return page.toString();
    }
}
