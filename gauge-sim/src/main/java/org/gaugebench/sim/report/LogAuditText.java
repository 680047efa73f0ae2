package org.gaugebench.sim.report;

import org.gaugebench.sim.advice.LogAudit;

/** An audit against a log of one's own, for people and for programs. */
public final class LogAuditText {
    private static final int LABEL = 13;

    private LogAuditText() {}

    /**
     * Writes the answer.
     *
     * @param file the log as the user named it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(String file, LogAudit.Result result) {
        Page page = new Page();
        page.paragraph(0, answer(result));
        page.paragraph(0, Page.clean(file));
        page.gap().labelled(0, LABEL, "the log", result.log());
        page.labelled(0, LABEL, "its charges", result.charging());
        page.labelled(0, LABEL, "the gauge", result.summary());
        String right = result.putRight();
        if (right != null) {
            page.labelled(0, LABEL, "put right", right);
        }
        AuditText.findings(page, result.findings());
        AuditText.list(page, "What no setting of it cures", result.noSettingCures());
        AuditText.list(page, "What the log cannot say", result.notKnown());
        AuditText.list(page, "The gauge that was run, as you told it", result.gauge());
        AuditText.list(page, "What was assumed", result.assumed());
        page.gap().paragraph(0, Cautions.DEFER);
        return page.toString();
    }

    private static String answer(LogAudit.Result result) {
        int count = result.findings().size();
        if (count > 0) {
            return (count == 1 ? "1 setting does" : count + " settings do")
                    + " not go with the battery or with what the log says.";
        }
        return result.noSettingCures().isEmpty()
                ? "Nothing found: the settings go with what the log says."
                : AuditText.NO_SETTING_CURES;
    }

    /** The same as one object on one line, with a line end. */
    public static String json(String file, LogAudit.Result result, String version) {
        return JsonDocument.of(
                "audit",
                AuditJson.FORMAT_VERSION,
                version,
                json -> {
                    json.writeStringField("log", file);
                    json.writeStringField("holds", result.log());
                    json.writeStringField("charges", result.charging());
                    json.writeStringField("summary", result.summary());
                    if (result.putRight() != null) {
                        json.writeStringField("allPutRight", result.putRight());
                    }
                    AuditJson.findings(json, result.findings());
                    JsonDocument.texts(json, "noSettingCures", result.noSettingCures());
                    JsonDocument.texts(json, "notKnown", result.notKnown());
                    JsonDocument.texts(json, "gauge", result.gauge());
                    JsonDocument.texts(json, "assumed", result.assumed());
                });
    }
}
