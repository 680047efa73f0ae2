package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.OwnAudit;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** An audit for people: how many things do not go together, then each with what to move. */
public final class AuditText {
    private static final int LABEL = 13;

    /** The answer where no setting is wrong and the gauge is. */
    static final String NO_SETTING_CURES =
            "No setting is wrong, but what the gauge itself does no setting cures: see below.";

    private AuditText() {}

    /**
     * Writes the answer.
     *
     * @param scenario that was audited
     * @param result what came of it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(Scenario scenario, SettingsAudit.Result result) {
        return write(scenario, result, List.of(), null);
    }

    /** The same of an owner's own system: with what his gauge does, and what was assumed. */
    public static String of(OwnAudit.Result audit) {
        return write(audit.scenario(), audit.result(), audit.assumed(), audit.told());
    }

    private static String write(
            Scenario scenario,
            SettingsAudit.Result result,
            List<String> assumed,
            OwnAudit.@Nullable Told told) {
        Page page = new Page();
        int count = result.findings().size();
        page.paragraph(0, answer(count, told));
        page.paragraph(0, Page.clean(scenario.name()));
        page.gap().labelled(0, LABEL, "in this run", result.summary());
        if (told != null) {
            beside(result, told).forEach(it -> page.labelled(0, LABEL, it.get(0), it.get(1)));
        }
        findings(page, result.findings());
        if (told != null) {
            list(page, "What no setting of it cures", told.noSettingCures());
            list(page, "The gauge that was run, as you told it", told.gauge());
        }
        list(page, "What was assumed", assumed);
        page.gap().paragraph(0, Cautions.DEFER);
        return page.toString();
    }

    /** How the owner's gauge goes otherwise: a label, and words that belong to it. */
    public static List<List<String>> beside(SettingsAudit.Result result, OwnAudit.Told told) {
        List<List<String>> lines = new ArrayList<>();
        String right = result.putRight();
        if (!result.findings().isEmpty() && right != null) {
            lines.add(List.of("put right", right + ", with all of them right"));
        }
        String worst = told.atWorst();
        if (worst != null) {
            lines.add(List.of("at worst", worst + ", if what you do not know of it is bad"));
        }
        lines.add(List.of("beside it", "our gauge with the same settings: " + told.ours()));
        return lines;
    }

    static void findings(Page page, List<Finding> findings) {
        int number = 1;
        for (Finding each : findings) {
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
    }

    static void list(Page page, String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.gap().line(heading);
            items.forEach(each -> page.labelled(2, 2, "-", each));
        }
    }

    /** The answer in one sentence. */
    public static String answer(int count, OwnAudit.@Nullable Told told) {
        if (count == 0 && told != null && !told.noSettingCures().isEmpty()) {
            return "No setting is wrong, but what the gauge itself does no setting cures: see"
                    + " below.";
        }
        return count == 0
                ? "Nothing found: settings, battery and charger go together."
                : (count == 1 ? "1 setting does" : count + " settings do")
                        + " not go with what the gauge is fitted to.";
    }
}
