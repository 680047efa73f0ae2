package org.gaugebench.sim.live.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is told about a form, without a browser. */
class SystemDeskTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Map<String, String> WORDS = Words.english().page();

    private final SystemDesk desk = new SystemDesk();

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private JsonNode ask(String question, String fields) throws Exception {
        String system = "{\"my-system\":1" + (fields.isEmpty() ? "" : "," + fields) + "}";
        String message = "{\"question\":\"%s\",\"system\":%s}".formatted(question, system);
        return JSON.readTree(desk.answer(bytes(message)));
    }

    private String refusal(String file) {
        FormRefusal e = assertThrows(FormRefusal.class, () -> desk.open(bytes(file)));
        assertFalse(e.reason().contains("\n"), "one sentence: " + e.reason());
        return e.status() + " " + e.reason();
    }

    /** A form in which each field is filled in. */
    private static MySystem full() {
        Map<FormField, String> values = new EnumMap<>(FormField.class);
        for (FormField field : FormField.values()) {
            values.put(field, field.choices().isEmpty() ? field.example() : field.choices().get(0));
        }
        values.put(FormField.CHANGED_AMOUNT, "90");
        return new MySystem(
                values,
                List.of(
                        new MySystem.Load("lamp", "1.2", "amps", "5", "2 A", ""),
                        new MySystem.Load("kettle \u00fc <b>", "800", "watts", "10 min", "", "yes"),
                        new MySystem.Load("", "2", "phone", "", "", "")),
                List.of(
                        new MySystem.Charger("sun", "10", "14.4"),
                        new MySystem.Charger("mains", "", "")),
                List.of(
                        note("0", "90"),
                        MySystem.Note.of(Map.of()),
                        note("12", "70"),
                        note("24", "52"),
                        note("36", "33")));
    }

    private static MySystem.Note note(String hours, String shown) {
        return MySystem.Note.of(Map.of("time", hours, "shown", shown));
    }

    @Test
    void whatIsSavedOpensToTheSameForm() throws Exception {
        MySystem full = full();
        String message = "{\"system\":" + MySystemFile.write(full) + "}";
        JsonNode saved = JSON.readTree(desk.save(bytes(message)));
        assertEquals("my-system.json", saved.path("name").asText(), saved.toString());
        byte[] file = bytes(saved.get("text").asText());
        assertEquals(full, MySystemFile.read(file));
        JsonNode opened = JSON.readTree(desk.open(file)).get("system");
        assertEquals(JSON.readTree(file), opened);
        assertEquals(FormField.values().length + 4, opened.size());
    }

    @Test
    void aFormWithNothingInItOpensToo() throws Exception {
        assertEquals(MySystem.EMPTY, MySystemFile.read(bytes(MySystemFile.write(MySystem.EMPTY))));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "no JSON|400 this is no file of 'my system'; expected one that this page saved,",
                "[]|400 this is no file of 'my system'",
                "{}|400 this is no file of 'my system'",
                "{\"my-system\":1|400 this is no file of 'my system'",
                "{\"my-system\":1}{}|400 this is no file of 'my system'",
                "{\"my-system\":\"1\"}|400 this is no file of 'my system'",
                "{\"my-system\":1,\"my-system\":1}|400 this is no file of 'my system'",
                "{\"my-system\":2}|400 this file is of layout 2; expected layout 1",
                "{\"my-system\":1,\"voltge\":\"12 V\"}|400 there is no field 'voltge' in a file of"
                        + " this page; did you mean 'voltage'?",
                "{\"my-system\":1,\"capacity\":100}|400 capacity: expected a text such as",
                "{\"my-system\":1,\"voltage\":\"13 V\"}|400 voltage: expected one of 12 V, 24 V,",
                "{\"my-system\":1,\"capacity\":\"lots\"}|400 capacity in this file: expected a"
                        + " charge such as 60 Ah, but found 'lots'",
                "{\"my-system\":1,\"loads\":[{\"nam\":\"lamp\"}]}|400 there is no field 'nam'",
                "{\"my-system\":1,\"loads\":[{\"unit\":\"volts\"}]}|400 unit: expected one of"
                        + " watts,",
                "{\"my-system\":1,\"loads\":{}}|400 this is no file of 'my system'",
                "{\"my-system\":1,\"chargers\":[{\"source\":\"wind\"}]}|400 source: expected one"
                        + " of",
                "{\"my-system\":1,\"capacity\":\"1\\u0007\"}|400 capacity: expected at most 120",
            })
    void aWrongFileIsToldInOneSentence(String file, String start) {
        assertTrue(refusal(file).startsWith(start), refusal(file));
    }

    @Test
    void aFileThatIsTooLargeOrTooLongIsTold() {
        assertTrue(refusal(" ".repeat(1 << 17)).startsWith("413 this is too large"));
        String rows = "{},".repeat(40) + "{}";
        assertTrue(
                refusal("{\"my-system\":1,\"loads\":[" + rows + "]}")
                        .startsWith("400 loads: expected at most 40 rows"));
        assertTrue(
                refusal("{\"my-system\":1,\"capacity\":\"" + "1".repeat(121) + "\"}")
                        .startsWith("400 capacity: expected at most 120 characters"));
        assertTrue(refusal("[".repeat(20_000)).startsWith("400 this is no file"));
    }

    /** Each field that is typed refuses what is none, at itself, with an example. */
    @ParameterizedTest
    @EnumSource(value = FormField.class, mode = EnumSource.Mode.EXCLUDE, names = "NAME")
    void aWrongTextIsToldAtItsField(FormField field) throws Exception {
        if (!field.choices().isEmpty()) {
            String text = "{\"my-system\":1,\"%s\":\"no-such\"}".formatted(field.key());
            assertTrue(refusal(text).startsWith("400 " + field.key() + ": expected one of "), text);
            return;
        }
        String more = field == FormField.CHANGED_AMOUNT ? "\"changed\":\"stored\"," : "";
        JsonNode wrong = ask("size", more + "\"%s\":\"many\"".formatted(field.key())).path("wrong");
        assertEquals(1, wrong.size(), wrong.toString());
        assertEquals(field.key(), wrong.get(0).get("field").asText());
        String message = wrong.get(0).get("message").asText();
        assertTrue(message.startsWith("expected ") && message.contains("such as "), message);
        assertTrue(message.contains("'many"), message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"name\":\"a:b\",\"amount\":\"1\"|loads.0.name|a name without a colon such as"
                        + " lamp",
                "\"name\":\"a\",\"amount\":\"0,5\"|loads.0.amount|the decimal sign is a point",
                "\"name\":\"a\",\"amount\":\"1.2 A, 5 h\"|loads.0.amount|a current such as 4.2 A",
                "\"name\":\"a\",\"amount\":\"5 V\"|loads.0.amount|which is a voltage",
                "\"name\":\"a\",\"amount\":\"1\",\"hours\":\"30\"|loads.0.hours|0 h to 24 h a day",
                "\"name\":\"a\",\"amount\":\"1\",\"hours\":\"long\"|loads.0.hours|such as 2 h 30",
                "\"name\":\"a\",\"amount\":\"5\",\"surge\":\"2\"|loads.0.surge|a surge is not less",
                "\"name\":\"a\",\"amount\":\"1\",\"surge\":\"x\"|loads.0.surge|such as 30 W",
                "\"amount\":\"two\",\"unit\":\"phone\"|loads.0.amount|charges a day such as 2",
            })
    void aWrongPartOfALoadIsToldThere(String row, String place, String words) throws Exception {
        JsonNode wrong = ask("size", "\"loads\":[{%s}]".formatted(row)).path("wrong");
        assertEquals(1, wrong.size(), wrong.toString());
        assertEquals(place, wrong.get(0).get("field").asText());
        assertTrue(wrong.get(0).get("message").asText().contains(words), wrong.toString());
    }

    @Test
    void wrongRowsAreToldByTheirNumberWhereOthersAreEmpty() throws Exception {
        String loads =
                "\"loads\":[{},{\"name\":\"a\",\"amount\":\"1\"},"
                        + "{\"name\":\"a\",\"amount\":\"1\"}]";
        String chargers = "\"chargers\":[{},{\"source\":\"sun\",\"amps\":\"x\"},{\"volts\":\"y\"}]";
        Set<String> places = new TreeSet<>();
        ask("size", loads + "," + chargers)
                .path("wrong")
                .forEach(each -> places.add(each.get("field").asText()));
        assertEquals(Set.of("loads.2.name", "chargers.1.amps", "chargers.2.volts"), places);
    }

    /** A number alone takes the unit beside its field; another unit stands as it is typed. */
    @Test
    void unitsMayBeLeftOutOrTyped() throws Exception {
        String bare =
                "\"capacity\":\"80\","
                        + "\"loads\":[{\"name\":\"a\",\"amount\":\"60\",\"hours\":\"5\"}]";
        String typed =
                "\"capacity\":\"80000 mAh\",\"loads\":[{\"name\":\"a\",\"amount\":\"0.06"
                        + " kW\",\"unit\":\"amps\",\"hours\":\"300 min\"}]";
        assertEquals(ask("size", bare), ask("size", typed));
    }

    /** Whatever is asked, with nothing known there is an answer and all that it rests on. */
    @ParameterizedTest
    @CsvSource({
        "size,''",
        "month,''",
        "audit,''",
        "symptom,'\"seen\":\"hours-never-change\"'",
        "changed,'\"changed\":\"battery-swapped\"'",
        "changed,'\"changed\":\"stored\"'",
        "changed,'\"changed\":\"winter\"'",
        "changed,'\"changed\":\"wire-off\"'",
        "changed,'\"changed\":\"second-battery\"'"
    })
    void withNothingKnownThereIsAnAnswer(String question, String fields) throws Exception {
        JsonNode answer = ask(question, fields);
        assertTrue(answer.path("answer").asText().length() > 20, answer.toString());
        List<String> assumed = new ArrayList<>();
        answer.get("assumed").forEach(each -> assumed.add(each.asText()));
        assertTrue(
                assumed.containsAll(
                        List.of(
                                "a battery of 12 V",
                                "a sealed lead-acid battery with glass mat",
                                "100 Ah printed on it",
                                "nothing draws current",
                                "no charger",
                                "no inverter")),
                assumed.toString());
        assertEquals(2, answer.get("cautions").size());
        assertTrue(answer.get("cautions").get(0).asText().contains("licensed person"));
        String scenario = answer.get("scenario").asText();
        if (!scenario.isEmpty()) {
            assertEquals("x.yaml", ScenarioReader.read("x.yaml", scenario).name());
        }
    }

    @Test
    void theSheetCarriesTheOwnersWordsAndSaysTheSameAsTheMonth() throws Exception {
        String system = MySystemFile.write(full());
        String sheet = desk.sheet(bytes("{\"system\":" + system + "}"));
        assertTrue(sheet.startsWith("<!DOCTYPE html>"));
        assertTrue(sheet.contains("<title>the hut at the end of the pier</title>"));
        assertTrue(sheet.contains("kettle ü &lt;b&gt;"), "an owner's word is made safe");
        JsonNode month =
                JSON.readTree(
                        desk.answer(bytes("{\"question\":\"month\",\"system\":" + system + "}")));
        assertTrue(sheet.contains("\"verdict\">" + month.get("answer").asText()), sheet);
        FormRefusal e =
                assertThrows(
                        FormRefusal.class,
                        () ->
                                desk.sheet(
                                        bytes(
                                                "{\"system\":{\"my-system\":1,\"capacity\":"
                                                        + "\"x\"}}")));
        assertTrue(e.reason().startsWith("capacity: expected a charge"), e.reason());
    }

    @Test
    void whatWasAskedHasToBeKnown() throws Exception {
        assertEquals("seen", ask("symptom", "").at("/wrong/0/field").asText());
        assertEquals("changed", ask("changed", "").at("/wrong/0/field").asText());
        FormRefusal e = assertThrows(FormRefusal.class, () -> ask("colour", ""));
        assertEquals(
                "expected a question such as size, month, audit, symptom, changed", e.reason());
        e = assertThrows(FormRefusal.class, () -> desk.answer(bytes("{\"question\":\"size\"}")));
        assertEquals("expected a form under \"system\"; there is none", e.reason());
    }

    @Test
    void aLoadOnAnInverterThatNobodyToldOfGetsOne() throws Exception {
        JsonNode answer =
                ask(
                        "size",
                        "\"loads\":[{\"name\":\"kettle\","
                                + "\"amount\":\"1800\",\"inverter\":\"yes\"}]");
        assertTrue(
                answer.get("assumed").toString().contains("an inverter of 1800 W"),
                answer.toString());
    }

    @Test
    void noUsualShuntIsToldInWords() {
        FormRefusal e =
                assertThrows(
                        FormRefusal.class,
                        () -> ask("month", "\"loads\":[{\"name\":\"a\",\"amount\":\"90000 W\"}]"));
        assertEquals(422, e.status());
        assertTrue(e.reason().contains("such as 500 A / 75 mV"), e.reason());
    }

    private static Set<String> found(String text, String pattern) {
        Set<String> keys = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) {
            keys.add(matcher.group(1));
        }
        return keys;
    }

    private static void plain(JsonNode node, List<String> texts) {
        if (node.isTextual()) {
            texts.add(node.asText());
        }
        node.forEach(each -> plain(each, texts));
    }

    /** Every key that an answer names has words, and none of its words is ours alone. */
    @Test
    void answersAreInPlainWordsAndEveryKeyHasSome() throws Exception {
        String file = MySystemFile.write(full());
        String wrongSettings =
                file.replace("\"typed-capacity\" : \"100\"", "\"typed-capacity\" : \"50\"")
                        .replace("\"full-volts\" : \"14.2\"", "\"full-volts\" : \"15\"")
                        .replace("\"sets-full\" : \"never\"", "\"sets-full\" : \"volts\"");
        assertFalse(file.equals(wrongSettings));
        for (Question question : Question.values()) {
            for (String system : List.of(file, wrongSettings)) {
                String message =
                        "{\"question\":\"" + question.key() + "\",\"system\":" + system + "}";
                JsonNode answer = JSON.readTree(desk.answer(bytes(message)));
                assertTrue(answer.has("answer"), answer.toString());
                List<String> texts = new ArrayList<>();
                ((com.fasterxml.jackson.databind.node.ObjectNode) answer).remove("scenario");
                plain(answer, texts);
                for (String text : texts) {
                    if (text.startsWith("#")) {
                        assertTrue(WORDS.containsKey(text.substring(1)), text);
                        continue;
                    }
                    String words =
                            " " + text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", " ") + " ";
                    for (String ours :
                            List.of("plant", "rig", "lane", "judge", "device", "tick", "c20")) {
                        assertFalse(words.contains(" " + ours + " "), text);
                    }
                }
            }
        }
    }

    @Test
    void everyWordThatThePageAsksForIsThereAndNoneStandsInTheFrame() {
        String script = PageAsset.text(SystemDesk.class, "system.js");
        Set<String> keys = found(script, "\\bw\\('([a-z-]+[a-z])'");
        for (Question question : Question.values()) {
            keys.add("sys-q-" + question.key());
        }
        keys.removeAll(WORDS.keySet());
        assertEquals(Set.of(), keys);
        String html = SystemDesk.page(WORDS, "0123");
        assertTrue(html.contains("content=\"0123\""));
        assertEquals(
                Set.of(),
                found(html, "(@[A-Z]+@|=\"#sys[a-z-]*\"|></(?:label|h2|p|legend)>(?=x))"));
        String frame =
                PageAsset.text(SystemDesk.class, "system.html")
                        .replaceAll("(?s)<head>.*</head>", "")
                        .replaceAll("<[^>]*>", " ")
                        .replaceAll("@[A-Z]+@|\\b(?:h|A|Ah|V)\\b|%", " ");
        assertEquals("", frame.strip().replaceAll("\\s+", " "));
    }

    /** A field without words would stand there nameless; an option too. */
    @Test
    void everySelectAndEveryFieldHasItsWords() {
        for (FormField field : FormField.values()) {
            assertTrue(WORDS.containsKey("sys-" + field.key()), field.key());
            for (String choice : field.choices()) {
                assertTrue(WORDS.containsKey(field.wordOf(choice)), field.wordOf(choice));
            }
        }
    }

    @Test
    void everyFindingOfAnAuditHasItsWords() throws Exception {
        Class<?> kinds = Class.forName("org.gaugebench.sim.advice.Suspect$Kind");
        for (Object kind : kinds.getEnumConstants()) {
            String key = "sys-f-" + kind.toString().toLowerCase(Locale.ROOT).replace('_', '-');
            assertTrue(WORDS.containsKey(key), key);
        }
    }
}
