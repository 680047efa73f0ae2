package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.rig.Cause;

/** The error split by cause as a part of a run's object. */
final class AttributionJson {
    private static final int SECOND_DIGITS = 3;
    private static final int PERCENT_DIGITS = 4;

    private AttributionJson() {}

    /** Writes the field "attribution"; the order of the parts is that of taking away. */
    static void write(Attribution attribution, JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("attribution");
        json.writeStringField("gauge", attribution.gauge());
        json.writeArrayFieldStart("moments");
        for (Split split : attribution.splits()) {
            json.writeStartObject();
            decimal(json, "atSeconds", split.atMillis(), SECOND_DIGITS);
            json.writeBooleanField("known", split.known());
            if (split.known()) {
                split(split, json);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void split(Split split, JsonGenerator json) throws IOException {
        json.writeNumberField("shownNanocoulombs", split.shownNanocoulombs());
        json.writeNumberField("trueNanocoulombs", split.trueNanocoulombs());
        part(json, split.errorNanocoulombs(), split.errorPartsPerMillion());
        json.writeArrayFieldStart("plain");
        for (Cause cause : Attribution.PLAIN) {
            cause(split, cause, json);
        }
        json.writeStartObject();
        json.writeStringField("cause", "everything-else");
        part(json, split.elseNanocoulombs(), split.elsePartsPerMillion());
        json.writeEndObject();
        json.writeEndArray();
        json.writeArrayFieldStart("causes");
        for (Cause cause : Cause.values()) {
            cause(split, cause, json);
        }
        json.writeEndArray();
    }

    private static void cause(Split split, Cause cause, JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeStringField("cause", cause.key());
        json.writeStringField("words", cause.words());
        part(json, split.nanocoulombs(cause), split.partsPerMillion(cause));
        json.writeEndObject();
    }

    private static void part(JsonGenerator json, long nanocoulombs, long partsPerMillion)
            throws IOException {
        json.writeNumberField("errorNanocoulombs", nanocoulombs);
        decimal(json, "errorPercentagePoints", partsPerMillion, PERCENT_DIGITS);
    }

    private static void decimal(JsonGenerator json, String key, long value, int digits)
            throws IOException {
        json.writeFieldName(key);
        json.writeNumber(Decimals.plain(value, digits));
    }
}
