package org.gaugebench.sim.report;

import org.gaugebench.sim.advice.ChangesResult;

/** What to redo after a change, for programs: one object; figures with six digits. */
public final class ChangesJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private ChangesJson() {}

    /** Writes the object, with a line end. */
    public static String of(ChangesResult result, String version) {
        return JsonDocument.of(
                "changed",
                FORMAT_VERSION,
                version,
                json -> {
                    json.writeStringField("answer", result.answer());
                    json.writeNumberField("daysBelieved", result.daysBelieved());
                    JsonDocument.number(json, "pointsOffAtOnce", result.offAtOnce());
                    json.writeArrayFieldStart("figures");
                    for (ChangesResult.Figure each : result.figures()) {
                        json.writeStartObject();
                        json.writeStringField("words", each.words());
                        JsonDocument.number(json, "value", each.value());
                        json.writeStringField("unit", each.unit());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    JsonDocument.texts(json, "redo", result.redo());
                    JsonDocument.texts(json, "assumed", result.assumed());
                    json.writeStringField("scenario", result.scenario());
                });
    }
}
