package org.gaugebench.sim.live.form;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.gaugebench.sim.report.Cautions;

/**
 * Grows one answer for the page: the sentence first, then parts in order. A cell of a table or a
 * heading is a text, or with {@code #} before it the key of a word of the page.
 */
final class AnswerJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final StringWriter text = new StringWriter();
    private final JsonGenerator json;

    /** What writes into the generator. */
    interface Body {
        void write(JsonGenerator json) throws IOException;
    }

    /**
     * Begins an answer.
     *
     * @param sentence with a number
     * @param more sentences that belong to it
     */
    AnswerJson(String sentence, List<String> more) {
        try {
            json = FACTORY.createGenerator(text);
            json.writeStartObject();
            json.writeStringField("answer", sentence);
            strings("more", more);
            json.writeArrayFieldStart("parts");
        } catch (IOException e) {
            throw never(e);
        }
    }

    /** An object by itself. */
    static String object(Body body) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            body.write(json);
            json.writeEndObject();
        } catch (IOException e) {
            throw never(e);
        }
        return text.toString();
    }

    private static UncheckedIOException never(IOException e) {
        return new UncheckedIOException("a string can be written", e);
    }

    /** The key of a word of the page, where a text is expected. */
    static String word(String key) {
        return "#" + key;
    }

    /** A table; a row's first cell is its head, the others are figures. */
    AnswerJson table(String heading, List<String> heads, List<List<String>> rows) {
        return part(
                "table",
                heading,
                it -> {
                    strings("heads", heads);
                    it.writeArrayFieldStart("rows");
                    for (List<String> row : rows) {
                        it.writeStartArray();
                        for (String cell : row) {
                            it.writeString(cell);
                        }
                        it.writeEndArray();
                    }
                    it.writeEndArray();
                });
    }

    /** A list; nothing where it is empty. */
    AnswerJson list(String heading, List<String> items) {
        return items.isEmpty() ? this : part("list", heading, it -> strings("items", items));
    }

    /** A numbered list, each item with lines under it. */
    AnswerJson steps(String heading, List<Step> steps) {
        if (steps.isEmpty()) {
            return this;
        }
        return part(
                "steps",
                heading,
                it -> {
                    it.writeArrayFieldStart("steps");
                    for (Step step : steps) {
                        it.writeStartObject();
                        it.writeStringField("what", step.what());
                        it.writeArrayFieldStart("lines");
                        for (List<String> line : step.lines()) {
                            it.writeStartArray();
                            for (String text : line) {
                                it.writeString(text);
                            }
                            it.writeEndArray();
                        }
                        it.writeEndArray();
                        it.writeEndObject();
                    }
                    it.writeEndArray();
                });
    }

    /**
     * One of {@link #steps}.
     *
     * @param what it is
     * @param lines a label, and texts that belong to it
     */
    record Step(String what, List<List<String>> lines) {}

    /** A paragraph. */
    AnswerJson paragraph(String heading, String words) {
        return part("text", heading, it -> it.writeStringField("text", words));
    }

    /** A picture that the page draws. */
    AnswerJson picture(String kind, String heading, Body body) {
        return part(kind, heading, body);
    }

    private AnswerJson part(String kind, String heading, Body body) {
        try {
            json.writeStartObject();
            json.writeStringField("kind", kind);
            json.writeStringField("heading", heading);
            body.write(json);
            json.writeEndObject();
            return this;
        } catch (IOException e) {
            throw never(e);
        }
    }

    private void strings(String name, List<String> texts) throws IOException {
        json.writeArrayFieldStart(name);
        for (String each : texts) {
            json.writeString(each);
        }
        json.writeEndArray();
    }

    /**
     * Ends it.
     *
     * @param assumed what was taken where nothing was told
     * @param scenario behind it; empty for none
     */
    String end(List<String> assumed, String scenario) {
        try (json) {
            json.writeEndArray();
            strings("assumed", assumed);
            strings("cautions", List.of(Cautions.DEFER, Cautions.NO_PROTECTION));
            json.writeStringField("scenario", scenario);
            json.writeEndObject();
        } catch (IOException e) {
            throw never(e);
        }
        return text.toString();
    }
}
