package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.OwnAudit;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.jspecify.annotations.Nullable;

/** An audit for programs: one object on one line. */
public final class AuditJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private AuditJson() {}

    /** Writes the object, with a line end. */
    public static String of(Scenario scenario, SettingsAudit.Result result, String version) {
        return write(scenario, result, null, version);
    }

    /** The same of an owner's own system: with what his gauge does. */
    public static String of(OwnAudit.Result audit, String version) {
        return write(audit.scenario(), audit.result(), audit.told(), version);
    }

    private static String write(
            Scenario scenario,
            SettingsAudit.Result result,
            OwnAudit.@Nullable Told told,
            String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, "audit", FORMAT_VERSION, version);
            json.writeStringField("scenario", scenario.name());
            json.writeStringField("scenarioDigest", ScenarioWriter.digest(scenario));
            json.writeStringField("summary", result.summary());
            if (told != null) {
                told(json, result, told);
            }
            findings(json, result.findings());
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
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
        strings(json, "noSettingCures", told.noSettingCures());
        strings(json, "gauge", told.gauge());
    }

    static void findings(JsonGenerator json, List<Finding> findings) throws IOException {
        json.writeArrayFieldStart("findings");
        for (Finding each : findings) {
            json.writeStartObject();
            json.writeStringField("key", each.key());
            json.writeStringField("what", each.what());
            json.writeStringField("evidence", each.evidence());
            json.writeStringField("consequence", each.consequence());
            strings(json, "remedy", each.remedy());
            json.writeStringField("confidence", each.confidence().words());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void strings(JsonGenerator json, String key, List<String> items) throws IOException {
        json.writeArrayFieldStart(key);
        for (String each : items) {
            json.writeString(each);
        }
        json.writeEndArray();
    }
}
