package org.gaugebench.sim.live.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.gaugebench.sim.advice.NotesSymptom;
import org.gaugebench.sim.advice.SymptomResult;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.logs.NotesReader;
import org.gaugebench.sim.logs.OwnersNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Notes typed into the form: read as the command line reads them, told at their row. */
class FormNotesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String LOGGER =
            "\"my-system\":1,\"voltage\":\"12 V\",\"chemistry\":\"lifepo4\",\"capacity\":\"40\","
                    + "\"loads\":[{\"name\":\"logger\",\"unit\":\"amps\",\"amount\":\"0.2\"}]";

    @TempDir Path folder;

    private final SystemDesk desk = new SystemDesk();

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Rows, each as parts with "; " between, such as "time 0; shown 90"; "-" for an empty one. */
    private static String rows(String... rows) {
        return Arrays.stream(rows)
                .map(
                        row ->
                                row.equals("-")
                                        ? "{}"
                                        : Arrays.stream(row.split("; ", -1))
                                                .map(part -> part.split(" ", 2))
                                                .map("\"%s\":\"%s\""::formatted)
                                                .collect(Collectors.joining(",", "{", "}")))
                .collect(Collectors.joining(",", ",\"notes\":[", "]"));
    }

    private JsonNode ask(String question, String system) throws Exception {
        String message = "{\"question\":\"%s\",\"system\":{%s}}".formatted(question, system);
        return JSON.readTree(desk.answer(bytes(message)));
    }

    private static Map<String, String> wrong(JsonNode answer) {
        Map<String, String> wrong = new TreeMap<>();
        answer.path("wrong")
                .forEach(it -> wrong.put(it.get("field").asText(), it.get("message").asText()));
        return wrong;
    }

    /** By hand: 3 points of 40 Ah a day with nothing on are 1.2 Ah in 24 h, 50 mA. */
    private static String[] drift() {
        List<String> rows = new ArrayList<>();
        rows.add("time 2026-05-03T07:00; shown 97; word charger-finished");
        for (int day = 1; day <= 8; day++) {
            rows.add(
                    "time 2026-05-%02dT07:00; shown %d; word nothing"
                            .formatted(3 + day, 97 - 3 * day));
        }
        return rows.toArray(String[]::new);
    }

    @Test
    void aZeroErrorIsToldWithItsSizeItsCheckAndItsScenario() throws Exception {
        JsonNode answer = ask("symptom", LOGGER + ",\"sets-full\":\"by-hand\"" + rows(drift()));
        assertTrue(
                answer.path("answer")
                        .asText()
                        .startsWith(
                                "These 9 notes point to one cause: zero error, downward, 50.0 mA,"
                                        + " 3.0 points a day."),
                answer.toString());
        JsonNode first = answer.at("/parts/0/steps/0");
        assertEquals("zero error, downward", first.get("what").asText());
        assertTrue(first.at("/lines/0/1").asText().startsWith("50.0 mA, 3.0 points a day;"));
        assertEquals("#sys-a-notes-best", first.at("/lines/1/1").asText());
        assertTrue(first.at("/lines/2/1").asText().contains("all loads and chargers off for 24 h"));
        assertEquals("floor-instead-of-round.yaml", first.at("/lines/3/1").asText());
    }

    /** Percents alone do not tell what is typed in from the shunt's rating: both scale them. */
    @Test
    void whatNotesCannotSeparateIsSaidAtEachOfThem() throws Exception {
        String[] rows = {
            "time 2026-05-03T07:00; shown 100; word set-to-100",
            "time 2026-05-04T07:00; shown 82",
            "time 2026-05-05T07:00; shown 64",
            "time 2026-05-06T07:00; shown 46",
            "time 2026-05-07T07:00; shown 28",
        };
        JsonNode answer = ask("symptom", LOGGER + rows(rows));
        assertTrue(
                answer.get("answer").asText().contains("cannot be told apart by these 5 notes"),
                answer.toString());
        Map<String, String> fit = new TreeMap<>();
        answer.at("/parts/0/steps")
                .forEach(it -> fit.put(it.get("what").asText(), it.at("/lines/1/1").asText()));
        String alike = "#sys-a-notes-alike";
        assertEquals(
                alike,
                fit.get("another shunt rating typed in than is printed on the shunt"),
                fit.toString());
        assertEquals(alike, fit.get("fewer amp-hours typed in than the battery holds"));
        assertTrue(fit.size() >= 2, fit.toString());
        for (String word : fit.values()) {
            assertTrue(Words.english().page().containsKey(word.substring(1)), word);
        }
    }

    /** The command's answer to the same notes in a file, word for word. */
    @Test
    void theFormAndAFileOfTheSameNotesGiveTheSameAnswer() throws Exception {
        StringBuilder csv = new StringBuilder("time,shown,ah,charged,volts,word\n");
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            String time = "2026-05-%02dT%02d:30".formatted(3 + i / 2, i % 2 == 0 ? 7 : 19);
            String shown = String.valueOf(95 - 7 * i % 40);
            String word = i % 5 == 0 ? "charger-finished" : "";
            csv.append("%s,%s,%d,%d,12.7,%s\n".formatted(time, shown, 38 - i, 2 * i, word));
            rows.add(
                    "time %s; shown %s %%; ah %d Ah; charged %d; volts 12.7V; word %s"
                            .formatted(time, shown, 38 - i, 2 * i, word));
        }
        List<OwnersNote> file =
                NotesReader.read(Files.writeString(folder.resolve("n.csv"), csv), "n.csv");
        String system = "{" + LOGGER + rows(rows.toArray(String[]::new)) + "}";
        List<FormReading.Wrong> wrong = new ArrayList<>();
        FormReading.Read read = FormReading.read(MySystemFile.read(bytes(system)), wrong);
        assertEquals(List.of(), wrong);
        assertEquals(file, read.notes());
        SymptomResult expected =
                NotesSymptom.of(file, read.system(), read.gauge(), new Answers(read).shunt());
        JsonNode answer = ask("symptom", system.substring(1, system.length() - 1));
        assertEquals(expected.answer(), answer.get("answer").asText());
        List<String> causes = new ArrayList<>();
        answer.at("/parts/0/steps").forEach(it -> causes.add(it.get("what").asText()));
        assertEquals(expected.causes().stream().map(it -> it.cause().words()).toList(), causes);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time soon|time|'soon' is not a time; expected for instance 2026-05-03T07:00, or",
                "time ?|time|'?' is not a time; expected for instance 2026-05-03T07:00",
                "time 7.5|time|'7.5' is not a time; expected for instance 2026-05-03T07:00",
                "time 2026-02-30T07:00|time|is no date and time that exists; expected for",
                "word nothing|time|the cell is empty; expected for instance 2026-05-03T07:00",
                "time 2026-05-03T07:00|time|is not later than the note before; expected notes in",
                "time 2026-05-02T07:00|time|is not later than the note before; expected notes in",
                "shown much|shown|'much' is not a number; expected a percent such as 82",
                "shown 2000|shown|'2000' cannot be; expected a percent such as 82",
                "volts 3|shown|the cell is empty; expected a percent such as 82",
                "shown 80; ah lots|ah|'lots' is not a number; expected amp-hours shown, such as",
                "shown 80; charged -3|charged|'-3' cannot be; expected amp-hours put in, such as",
                "shown 80; volts 5 A|volts|'5 A' is not a number; expected volts such as 12.7",
            })
    void whatIsWrongIsToldAtItsRowAndPart(String row, String part, String message)
            throws Exception {
        String whole = row;
        if (part.equals("time")) {
            whole = "shown 80; " + row;
        } else if (!row.contains("time")) {
            whole = "time 2026-05-04T07:00; " + row;
        }
        String[] drift = drift();
        String[] rows = {"-", drift[0], "-", whole};
        // Asked for anything, not for these notes alone: a wrong form has no answer.
        Map<String, String> wrong = wrong(ask("size", LOGGER + rows(rows)));
        assertEquals(List.of("notes.3." + part), List.copyOf(wrong.keySet()), wrong.toString());
        assertTrue(wrong.get("notes.3." + part).contains(message), wrong.toString());
    }

    @Test
    void tooFewNotesStandInNobodysWayButThatOfTheirQuestion() throws Exception {
        String few = LOGGER + rows("-", "time 0; shown 90", "time 24; shown 80");
        assertEquals(
                Map.of(
                        "notes",
                        "2 notes say too little; expected four or more, over 12 h or longer"),
                wrong(ask("symptom", few)));
        assertTrue(ask("size", few).has("answer"));
        String seen = ",\"seen\":\"hours-never-change\"";
        assertEquals(1, wrong(ask("symptom", few + seen)).size(), "half a list is not left aside");
        assertFalse(JSON.readTree(desk.save(bytes("{\"system\":{" + few + "}}"))).has("wrong"));
    }

    @Test
    void emptyRowsAreNoNotesAndNotesGoBeforeWhatIsSeen() throws Exception {
        String seen = ",\"seen\":\"hours-never-change\"";
        JsonNode bySight = ask("symptom", LOGGER + seen + rows("-", "-"));
        assertTrue(bySight.get("answer").asText().startsWith("Look first at this"));
        assertEquals(
                List.of("seen"), List.copyOf(wrong(ask("symptom", LOGGER + rows("-"))).keySet()));
        JsonNode byNotes = ask("symptom", LOGGER + seen + rows(drift()));
        assertNotEquals(bySight.get("answer"), byNotes.get("answer"));
        assertTrue(byNotes.get("assumed").toString().contains("which is left aside"));
    }

    @Test
    void aFileWithWrongNotesChangesNothing() {
        String file = "{" + LOGGER + rows("time 0; shown much") + "}";
        FormRefusal e = assertThrows(FormRefusal.class, () -> desk.open(bytes(file)));
        assertTrue(e.reason().startsWith("notes.0.shown in this file: 'much'"), e.reason());
        String word = "{" + LOGGER + rows("time 0; shown 9; word sad") + "}";
        e = assertThrows(FormRefusal.class, () -> desk.open(bytes(word)));
        assertTrue(e.reason().startsWith("word: expected one of charger-finished"), e.reason());
        String[] many = new String[121];
        Arrays.fill(many, "-");
        String long121 = "{" + LOGGER + rows(many) + "}";
        e = assertThrows(FormRefusal.class, () -> desk.open(bytes(long121)));
        assertEquals("notes: expected at most 120 rows", e.reason());
    }
}
