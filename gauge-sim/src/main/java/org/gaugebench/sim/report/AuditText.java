package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.scenario.Scenario;

/** An audit for people: how many things do not go together, then each with what to move. */
public final class AuditText {
    private static final int LABEL = 13;

    private AuditText() {}

    /**
     * Writes the answer.
     *
     * @param scenario that was audited
     * @param result what came of it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(Scenario scenario, SettingsAudit.Result result) {
        return of(scenario, result, List.of());
    }

    /** The same, with what was taken where nothing was told. */
    public static String of(Scenario scenario, SettingsAudit.Result result, List<String> assumed) {
        Page page = new Page();
        int count = result.findings().size();
        page.paragraph(0, answer(count));
        page.paragraph(0, Page.clean(scenario.name()));
        page.gap().labelled(0, LABEL, "in this run", result.summary());
        int number = 1;
        for (Finding each : result.findings()) {
            page.gap().paragraph(0, number++ + ". " + each.what() + " (" + each.key() + ")");
            page.labelled(2, LABEL, "evidence", each.evidence());
            page.labelled(2, LABEL, "consequence", each.consequence());
            page.labelled(
                    2,
                    LABEL,
                    "remedy",
                    each.remedy().isEmpty()
                            ? "no setting of the gauge"
                            : String.join(", ", each.remedy()));
            page.labelled(2, LABEL, "confidence", each.confidence().words());
        }
        if (!assumed.isEmpty()) {
            page.gap().line("What was assumed");
            assumed.forEach(each -> page.labelled(2, 2, "-", each));
        }
        page.gap().paragraph(0, Cautions.DEFER);
        return page.toString();
    }

    /** The answer in one sentence. */
    public static String answer(int count) {
        return count == 0
                ? "Nothing found: settings, battery and charger go together."
                : (count == 1 ? "1 setting does" : count + " settings do")
                        + " not go with what the gauge is fitted to.";
    }
}
