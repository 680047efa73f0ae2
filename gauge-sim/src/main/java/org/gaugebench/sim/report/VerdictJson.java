package org.gaugebench.sim.report;

import org.gaugebench.sim.advice.MeterVerdict;
import org.gaugebench.sim.logs.MeterCheck;

/** What measured figures mean, for programs: one object. */
public final class VerdictJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private VerdictJson() {}

    /** Writes the object, with a line end. */
    public static String of(MeterVerdict verdict, String version) {
        return JsonDocument.of(
                "verdict",
                FORMAT_VERSION,
                version,
                json -> {
                    json.writeStringField("answer", verdict.answer());
                    json.writeNumberField("daysWithinTenBefore", verdict.daysBefore());
                    json.writeNumberField("daysWithinTenNow", verdict.daysNow());
                    json.writeArrayFieldStart("checks");
                    for (MeterVerdict.Line each : verdict.lines()) {
                        json.writeStartObject();
                        json.writeStringField("check", each.check().key());
                        json.writeStringField("verdict", each.word().words());
                        json.writeStringField("found", each.found());
                        json.writeStringField("good", each.why());
                        json.writeStringField("todo", each.todo());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    JsonDocument.texts(
                            json,
                            "missing",
                            verdict.missing().stream().map(MeterCheck::key).toList());
                    JsonDocument.texts(json, "assumed", verdict.assumed());
                });
    }
}
