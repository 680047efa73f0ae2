package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.gaugebench.sim.advice.MeterVerdict;
import org.gaugebench.sim.logs.MeterCheck;

/** What measured figures mean, for programs: one object. */
public final class VerdictJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private VerdictJson() {}

    /** Writes the object, with a line end. */
    public static String of(MeterVerdict verdict, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeNumberField("formatVersion", FORMAT_VERSION);
            json.writeStringField("version", version);
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
            texts(json, "missing", verdict.missing().stream().map(MeterCheck::key).toList());
            texts(json, "assumed", verdict.assumed());
            texts(json, "cautions", List.of(Cautions.DEFER, Cautions.NO_PROTECTION));
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
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
