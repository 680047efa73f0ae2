package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import org.gaugebench.sim.explain.Explanation;
import org.gaugebench.sim.explain.Section;
import org.gaugebench.sim.explain.Step;
import org.gaugebench.sim.scenario.Scenario;

/** An explained moment as one JSON object. */
public final class ExplanationJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private static final int SECOND_DIGITS = 3;

    private ExplanationJson() {}

    /**
     * Writes the object.
     *
     * @param scenario what was run
     * @param seed with which seed
     * @param explanation what was found
     * @param version of the program
     * @return one line, with its end
     */
    public static String of(Scenario scenario, long seed, Explanation explanation, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, "explain", FORMAT_VERSION, version);
            json.writeStringField("scenario", scenario.name());
            json.writeNumberField("seed", seed);
            json.writeStringField("gauge", explanation.gauge());
            json.writeFieldName("atSeconds");
            json.writeNumber(Decimals.plain(explanation.atMillis(), SECOND_DIGITS));
            json.writeStringField("sentence", explanation.sentence());
            json.writeStringField("situation", explanation.situation());
            json.writeNumberField("contradictions", explanation.contradictions());
            json.writeArrayFieldStart("sections");
            for (Section section : explanation.sections()) {
                write(section, json);
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void write(Section section, JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeStringField("title", section.title());
        json.writeStringField("where", section.where());
        json.writeArrayFieldStart("steps");
        for (Step step : section.steps()) {
            json.writeStartObject();
            json.writeStringField("label", step.label());
            field(json, "calculation", step.calculation());
            if (!step.isFigure()) {
                json.writeStringField("result", step.result());
            } else {
                json.writeFieldName("result");
                json.writeNumber(new BigInteger(step.result()));
            }
            field(json, "unit", step.unit());
            field(json, "register", step.register());
            BigInteger held = step.held();
            if (held != null && step.contradicts()) {
                json.writeFieldName("registerHolds");
                json.writeNumber(held);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void field(JsonGenerator json, String name, String text) throws IOException {
        if (!text.isEmpty()) {
            json.writeStringField(name, text);
        }
    }
}
