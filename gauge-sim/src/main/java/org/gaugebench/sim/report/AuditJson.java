package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.OwnAudit;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioWriter;

/** An audit for programs: one object on one line. */
public final class AuditJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private AuditJson() {}

    /** Writes the object, with a line end. */
    public static String of(Scenario scenario, SettingsAudit.Result result, String version) {
        return JsonDocument.of(
                "audit",
                FORMAT_VERSION,
                version,
                json -> {
                    head(json, scenario, result);
                    findings(json, result.findings());
                });
    }

    /** The same of an owner's own system: with what his gauge does, and the scenario itself. */
    public static String of(OwnAudit.Result audit, String version) {
        SettingsAudit.Result result = audit.result();
        OwnAudit.Told told = audit.told();
        return JsonDocument.of(
                "audit",
                FORMAT_VERSION,
                version,
                json -> {
                    head(json, audit.scenario(), result);
                    if (told != null) {
                        told(json, result, told);
                    }
                    findings(json, result.findings());
                    JsonDocument.texts(json, "assumed", audit.assumed());
                    json.writeStringField("scenarioText", audit.text());
                });
    }

    private static void head(JsonGenerator json, Scenario scenario, SettingsAudit.Result result)
            throws IOException {
        json.writeStringField("scenario", scenario.name());
        json.writeStringField("scenarioDigest", ScenarioWriter.digest(scenario));
        json.writeStringField("summary", result.summary());
    }

    private static void told(JsonGenerator json, SettingsAudit.Result result, OwnAudit.Told told)
            throws IOException {
        if (result.putRight() != null) {
            json.writeStringField("allPutRight", result.putRight());
        }
        if (told.atWorst() != null) {
            json.writeStringField("atWorst", told.atWorst());
        }
        json.writeStringField("ourGaugeBeside", told.ours());
        JsonDocument.texts(json, "noSettingCures", told.noSettingCures());
        JsonDocument.texts(json, "gauge", told.gauge());
    }

    static void findings(JsonGenerator json, List<Finding> findings) throws IOException {
        json.writeArrayFieldStart("findings");
        for (Finding each : findings) {
            json.writeStartObject();
            json.writeStringField("key", each.key());
            json.writeStringField("what", each.what());
            json.writeStringField("evidence", each.evidence());
            json.writeStringField("consequence", each.consequence());
            JsonDocument.texts(json, "remedy", each.remedy());
            json.writeStringField("confidence", each.confidence().words());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
