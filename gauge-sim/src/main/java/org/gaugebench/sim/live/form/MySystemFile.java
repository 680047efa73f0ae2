package org.gaugebench.sim.live.form;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.logs.NoteCells;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.units.Texts;

/**
 * The file of a form, JSON: {@code "my-system": 1}, a text for each field that is known, and lists
 * of texts for loads, chargers and notes. The page's own messages hold the same object.
 */
final class MySystemFile {
    /** Most bytes of a file or a message; a long form is a tenth of it. */
    static final int LARGEST_BYTES = 1 << 16;

    /** The key by which a file is known, with the version of its layout. */
    static final String MARK = "my-system";

    static final String NAME = "my-system.json";

    private static final int VERSION = 1;
    private static final int MOST_ROWS = 40;

    /** Two notes a day for two months. */
    private static final int MOST_NOTES = 120;

    private static final int LONGEST_TEXT = 120;
    private static final String LOADS = "loads";
    private static final String CHARGERS = "chargers";
    private static final String NOTES = "notes";
    private static final JsonFactory FACTORY =
            JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .streamReadConstraints(
                            StreamReadConstraints.builder()
                                    .maxNestingDepth(8)
                                    .maxStringLength(LARGEST_BYTES)
                                    .build())
                    .build();

    private boolean isMarked;
    private final Map<FormField, String> values = new EnumMap<>(FormField.class);
    private final List<MySystem.Load> loads = new ArrayList<>();
    private final List<MySystem.Charger> chargers = new ArrayList<>();
    private final List<MySystem.Note> notes = new ArrayList<>();

    private MySystemFile() {}

    /** A message or a file, read key by key. */
    interface Keys {
        /** Takes a key whose value is next; false if there is no such key. */
        boolean take(String key, JsonParser parser) throws IOException, FormRefusal;
    }

    /**
     * Reads a file.
     *
     * @param body its bytes, UTF-8
     * @throws FormRefusal with one sentence if it is anything else
     */
    static MySystem read(byte[] body) throws FormRefusal {
        MySystemFile file = new MySystemFile();
        parse(body, file::take, file.keys());
        return file.done();
    }

    /** Reads one object, key by key. */
    static void parse(byte[] body, Keys keys, List<String> known) throws FormRefusal {
        if (body.length > LARGEST_BYTES) {
            throw new FormRefusal(
                    413, "this is too large for a system: expected at most 64 kilobytes");
        }
        try (JsonParser parser = FACTORY.createParser(body)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw foreign();
            }
            object(parser, keys, known);
            if (parser.nextToken() != null) {
                throw foreign();
            }
        } catch (IOException e) {
            throw foreign();
        }
    }

    /** Reads the system inside a message. */
    static MySystem read(JsonParser parser) throws IOException, FormRefusal {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            throw foreign();
        }
        MySystemFile file = new MySystemFile();
        object(parser, file::take, file.keys());
        return file.done();
    }

    private static void object(JsonParser parser, Keys keys, List<String> known)
            throws IOException, FormRefusal {
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String key = parser.currentName();
            parser.nextToken();
            if (!keys.take(key, parser)) {
                String near = Nearest.of(key, known);
                throw new FormRefusal(
                        400,
                        "there is no field '%s' in a file of this page; %s"
                                .formatted(
                                        Texts.shortened(key),
                                        near == null
                                                ? "expected one that this page saved"
                                                : "did you mean '" + near + "'?"));
            }
        }
        if (parser.currentToken() != JsonToken.END_OBJECT) {
            throw foreign();
        }
    }

    private MySystem done() throws FormRefusal {
        if (!isMarked) {
            throw foreign();
        }
        return new MySystem(values, loads, chargers, notes);
    }

    private static FormRefusal foreign() {
        return new FormRefusal(
                400,
                "this is no file of 'my system'; expected one that this page saved, such as "
                        + NAME);
    }

    private List<String> keys() {
        List<String> keys = new ArrayList<>(List.of(MARK, LOADS, CHARGERS, NOTES));
        Arrays.stream(FormField.values()).map(FormField::key).forEach(keys::add);
        return keys;
    }

    private boolean take(String key, JsonParser parser) throws IOException, FormRefusal {
        switch (key) {
            case MARK -> mark(parser);
            case LOADS -> rows(parser, key, MySystem.Load.PARTS, it -> loads.add(load(it)));
            case CHARGERS ->
                    rows(parser, key, MySystem.Charger.PARTS, it -> chargers.add(charger(it)));
            case NOTES -> rows(parser, key, MySystem.Note.PARTS, it -> notes.add(note(it)));
            default -> {
                FormField field = FormField.of(key);
                if (field == null) {
                    return false;
                }
                String text = text(key, parser);
                if (!text.isEmpty()) {
                    values.put(field, choice(key, text, field.choices()));
                }
            }
        }
        return true;
    }

    private void mark(JsonParser parser) throws IOException, FormRefusal {
        if (parser.currentToken() != JsonToken.VALUE_NUMBER_INT) {
            throw foreign();
        }
        if (!parser.getText().equals(String.valueOf(VERSION))) {
            throw new FormRefusal(
                    400,
                    "this file is of layout %s; expected layout %d, which this program reads"
                            .formatted(Texts.shortened(parser.getText()), VERSION));
        }
        isMarked = true;
    }

    private static MySystem.Load load(Map<String, String> texts) throws FormRefusal {
        MySystem.Load load = MySystem.Load.of(texts);
        choice("unit", load.unit(), MySystem.UNITS);
        choice("inverter", load.inverter(), List.of("", "yes"));
        return load;
    }

    private static MySystem.Charger charger(Map<String, String> texts) throws FormRefusal {
        MySystem.Charger charger = MySystem.Charger.of(texts);
        if (!charger.source().isEmpty()) {
            choice("source", charger.source(), MySystem.SOURCES);
        }
        return charger;
    }

    private static MySystem.Note note(Map<String, String> texts) throws FormRefusal {
        MySystem.Note note = MySystem.Note.of(texts);
        String word = note.text(NoteCells.Part.WORD);
        if (!word.isEmpty()) {
            choice("word", word, MySystem.Note.WORDS);
        }
        return note;
    }

    private static String choice(String key, String text, List<String> choices) throws FormRefusal {
        if (!choices.isEmpty() && !choices.contains(text)) {
            throw new FormRefusal(
                    400,
                    "%s: expected one of %s, but found '%s'"
                            .formatted(key, String.join(", ", choices), Texts.shortened(text)));
        }
        return text;
    }

    /** What becomes of a row. */
    private interface Row {
        void add(Map<String, String> texts) throws FormRefusal;
    }

    private static void rows(JsonParser parser, String list, List<String> parts, Row row)
            throws IOException, FormRefusal {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            throw foreign();
        }
        int most = list.equals(NOTES) ? MOST_NOTES : MOST_ROWS;
        int count = 0;
        while (parser.nextToken() == JsonToken.START_OBJECT) {
            if (++count > most) {
                throw new FormRefusal(400, list + ": expected at most " + most + " rows");
            }
            Map<String, String> texts = new LinkedHashMap<>();
            object(
                    parser,
                    (key, inside) -> {
                        if (!parts.contains(key)) {
                            return false;
                        }
                        texts.put(key, text(key, inside));
                        return true;
                    },
                    parts);
            texts.values().removeIf(String::isEmpty);
            row.add(texts);
        }
        if (parser.currentToken() != JsonToken.END_ARRAY) {
            throw foreign();
        }
    }

    /** A text within limits, without spaces around it. */
    static String text(String key, JsonParser parser) throws IOException, FormRefusal {
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            throw new FormRefusal(
                    400, "%s: expected a text such as \"12 V\"".formatted(Texts.shortened(key)));
        }
        String text = parser.getText().strip();
        if (text.length() > LONGEST_TEXT || text.chars().anyMatch(Character::isISOControl)) {
            throw new FormRefusal(
                    400,
                    "%s: expected at most %d characters in one line"
                            .formatted(Texts.shortened(key), LONGEST_TEXT));
        }
        return text;
    }

    /** Writes a file; {@link #read(byte[])} gives the same form again. */
    static String write(MySystem system) {
        StringWriter text = new StringWriter();
        DefaultPrettyPrinter pretty = new DefaultPrettyPrinter();
        pretty.indentArraysWith(new DefaultIndenter("  ", "\n"));
        pretty.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.setPrettyPrinter(pretty);
            write(json, system);
        } catch (IOException e) {
            throw new UncheckedIOException("a string can be written", e);
        }
        return text + "\n";
    }

    static void write(JsonGenerator json, MySystem system) throws IOException {
        json.writeStartObject();
        json.writeNumberField(MARK, VERSION);
        for (Map.Entry<FormField, String> each : system.values().entrySet()) {
            json.writeStringField(each.getKey().key(), each.getValue());
        }
        json.writeArrayFieldStart(LOADS);
        for (MySystem.Load each : system.loads()) {
            row(json, MySystem.Load.PARTS, each.texts());
        }
        json.writeEndArray();
        json.writeArrayFieldStart(CHARGERS);
        for (MySystem.Charger each : system.chargers()) {
            row(json, MySystem.Charger.PARTS, each.texts());
        }
        json.writeEndArray();
        // A form without notes stays a file that says nothing of them.
        if (!system.notes().isEmpty()) {
            json.writeArrayFieldStart(NOTES);
            for (MySystem.Note each : system.notes()) {
                row(json, MySystem.Note.PARTS, each.texts());
            }
            json.writeEndArray();
        }
        json.writeEndObject();
    }

    private static void row(JsonGenerator json, List<String> parts, List<String> texts)
            throws IOException {
        json.writeStartObject();
        for (int i = 0; i < parts.size(); i++) {
            if (!texts.get(i).isEmpty()) {
                json.writeStringField(parts.get(i), texts.get(i));
            }
        }
        json.writeEndObject();
    }
}
