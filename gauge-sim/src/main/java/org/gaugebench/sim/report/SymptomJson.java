package org.gaugebench.sim.report;

import org.gaugebench.sim.advice.SymptomResult;
import org.gaugebench.sim.advice.TroubleCause;

/** What may be behind what was seen, for programs: one object, the likeliest cause first. */
public final class SymptomJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private SymptomJson() {}

    /**
     * Writes the object, with a line end.
     *
     * @param result what came of it
     * @param version of this program
     */
    public static String of(SymptomResult result, String version) {
        return JsonDocument.of(
                "symptom",
                FORMAT_VERSION,
                version,
                json -> {
                    json.writeStringField("answer", result.answer());
                    json.writeArrayFieldStart("causes");
                    for (SymptomResult.Ranked each : result.causes()) {
                        TroubleCause cause = each.cause();
                        json.writeStartObject();
                        json.writeStringField("what", cause.words());
                        json.writeStringField("size", each.size());
                        json.writeStringField("check", cause.check());
                        json.writeStringField("scenario", cause.scenario() + ".yaml");
                        json.writeBooleanField(
                                "fitsAsWellAsTheFirst", result.alike().contains(cause));
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    JsonDocument.texts(json, "assumed", result.assumed());
                    JsonDocument.texts(json, "findOut", result.findOut());
                });
    }
}
