package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.gaugebench.sim.advice.Finding;
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
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, "audit", FORMAT_VERSION, version);
            json.writeStringField("scenario", scenario.name());
            json.writeStringField("scenarioDigest", ScenarioWriter.digest(scenario));
            json.writeStringField("summary", result.summary());
            json.writeArrayFieldStart("findings");
            for (Finding each : result.findings()) {
                json.writeStartObject();
                json.writeStringField("key", each.key());
                json.writeStringField("what", each.what());
                json.writeStringField("evidence", each.evidence());
                json.writeStringField("consequence", each.consequence());
                json.writeArrayFieldStart("remedy");
                for (String line : each.remedy()) {
                    json.writeString(line);
                }
                json.writeEndArray();
                json.writeStringField("confidence", each.confidence().words());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }
}
