package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.gaugebench.sim.advice.ChangesResult;

/** What to redo after a change, for programs: one object; figures with six digits. */
public final class ChangesJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private static final MathContext DIGITS = new MathContext(6);

    private ChangesJson() {}

    /** Writes the object, with a line end. */
    public static String of(ChangesResult result, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeNumberField("formatVersion", FORMAT_VERSION);
            json.writeStringField("version", version);
            json.writeStringField("answer", result.answer());
            json.writeNumberField("daysBelieved", result.daysBelieved());
            number(json, "pointsOffAtOnce", result.offAtOnce());
            json.writeArrayFieldStart("figures");
            for (ChangesResult.Figure each : result.figures()) {
                json.writeStartObject();
                json.writeStringField("words", each.words());
                number(json, "value", each.value());
                json.writeStringField("unit", each.unit());
                json.writeEndObject();
            }
            json.writeEndArray();
            texts(json, "redo", result.redo());
            texts(json, "assumed", result.assumed());
            json.writeStringField("scenario", result.scenario());
            texts(json, "cautions", List.of(Cautions.DEFER, Cautions.NO_PROTECTION));
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void number(JsonGenerator json, String name, double value) throws IOException {
        json.writeNumberField(name, new BigDecimal(value).round(DIGITS));
    }

    private static void texts(JsonGenerator json, String name, List<String> texts)
            throws IOException {
        json.writeArrayFieldStart(name);
        for (String each : texts) {
            json.writeString(each);
        }
        json.writeEndArray();
    }
}
