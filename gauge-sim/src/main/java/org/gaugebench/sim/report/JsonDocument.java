package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/** What the answers to owners have in common as JSON: how they begin and end, and their figures. */
final class JsonDocument {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final MathContext DIGITS = new MathContext(6);

    private JsonDocument() {}

    /** What an answer has of its own. */
    interface Body {
        void write(JsonGenerator json) throws IOException;
    }

    /**
     * Writes one object on a line, with its end.
     *
     * @param command whose answer it is
     * @param formatVersion of the object's layout
     * @param version of this program
     * @param body its own fields, after those three and before the cautions
     */
    static String of(String command, int formatVersion, String version, Body body) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, command, formatVersion, version);
            body.write(json);
            texts(json, "cautions", List.of(Cautions.DEFER, Cautions.NO_PROTECTION));
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("a string can be written", e);
        }
        return text + "\n";
    }

    static void texts(JsonGenerator json, String name, List<String> texts) throws IOException {
        json.writeArrayFieldStart(name);
        for (String each : texts) {
            json.writeString(each);
        }
        json.writeEndArray();
    }

    /** Six digits; null where there is no figure. */
    static void number(JsonGenerator json, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(name, new BigDecimal(value).round(DIGITS));
        } else {
            json.writeNullField(name);
        }
    }
}
