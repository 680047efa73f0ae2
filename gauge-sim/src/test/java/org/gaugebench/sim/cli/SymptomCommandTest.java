package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.advice.Seen;
import org.gaugebench.sim.advice.TroubleCause;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SymptomCommandTest {
    @TempDir private Path folder;

    private static int run(FakeTerminal terminal, String... more) {
        List<String> all =
                new ArrayList<>(List.of("symptom", "--voltage", "12 V", "--chemistry", "lifepo4"));
        all.addAll(List.of("--capacity", "40 Ah", "--load", "logger: 200 mA, 24 h"));
        all.addAll(List.of(more));
        return terminal.run(all.toArray(new String[0]));
    }

    @ParameterizedTest
    @EnumSource
    void eachSightHasAnAnswer(Seen seen) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, run(terminal, "--seen", seen.key()), terminal.err());
        assertTrue(terminal.out().startsWith("Look first at this, 1 of "), terminal.out());
        assertTrue(terminal.out().lines().allMatch(it -> it.length() <= 80), terminal.out());
    }

    /** By hand: 12 mA over 24 h are 0.288 Ah, of 40 Ah 0.72 %. */
    @Test
    void whatIsToldStandsBeforeExamples() {
        FakeTerminal terminal = new FakeTerminal();
        run(terminal, "--seen", "dark-at-30-percent", "--own-current", "12 mA");
        String out = terminal.out();
        int told = out.indexOf("not counted: 0.72 points a day");
        int example = out.indexOf("6.00 points a day");
        assertTrue(told > 0 && told < example, out);
    }

    @Test
    void jsonSaysTheSame() throws IOException {
        FakeTerminal text = new FakeTerminal();
        FakeTerminal terminal = new FakeTerminal();
        run(text, "--seen", "dark-at-30-percent", "--own-current", "12 mA");
        int code =
                run(terminal, "--seen", "dark-at-30-percent", "--own-current", "12 mA", "--json");
        assertEquals(ExitCodes.OK, code, terminal.err());
        String page = text.out().replaceAll("\\s+", " ");
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        assertTrue(page.startsWith(json.get("answer").asText()), page);
        int place = 1;
        for (JsonNode each : json.get("causes")) {
            String words = each.get("what").asText() + ": " + each.get("size").asText();
            assertTrue(page.contains(place + ". " + words), words);
            assertTrue(page.contains("Run: " + each.get("scenario").asText()), words);
            place++;
        }
        assertTrue(place > 2, terminal.out());
        assertTrue(json.get("cautions").get(0).asText().contains("local code"));
    }

    @ParameterizedTest
    @EnumSource
    void eachCauseHasItsScenarioOnTheShelf(TroubleCause cause) throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("..", "scenarios"))) {
            assertTrue(files.anyMatch(it -> it.endsWith(cause.scenario() + ".yaml")));
        }
    }

    @Test
    void wrongNotesAreAllTold() throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("n.csv"),
                        "time,shown,word\n0,90,\n12,much,\n12,80,flat\nnoon,70,\n");
        FakeTerminal terminal = new FakeTerminal();
        int code = run(terminal, "--notes", file.toString(), "--own-current", "3");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        String err = terminal.err();
        assertTrue(err.contains("n.csv:3:4: 'much' is not a number"), err);
        assertTrue(err.contains("n.csv:4:7: 'flat' is no word known here; expected one of"), err);
        assertTrue(err.contains("n.csv:5:1: "), err);
        assertTrue(err.contains("--own-current"), err);
    }

    @Test
    void aHeaderAndTooFewNotesAreTold() throws IOException {
        Path file = Files.writeString(folder.resolve("n.csv"), "when,shown\n0,90\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--notes", file.toString()));
        assertTrue(terminal.err().contains("n.csv:1:1: no such column 'when'"), terminal.err());
        Files.writeString(file, "time,shown\n0,90\n");
        FakeTerminal few = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(few, "--notes", file.toString()));
        assertTrue(few.err().contains("1 note says too little; expected four"), few.err());
    }

    @Test
    void oneOfTheTwoIsNeeded() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal));
        assertTrue(terminal.err().contains("expected either --seen or --notes"), terminal.err());
    }

    /** By hand: 3 points of 40 Ah a day with nothing on are 1.2 Ah in 24 h, 50 mA. */
    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void goodNotesHaveAnAnswer(String separator) throws IOException {
        StringBuilder text = new StringBuilder("\uFEFFtime,shown,ah,word\r\n");
        text.append("2026-05-03T07:00,97,,charger-finished\n");
        for (int day = 1; day <= 8; day++) {
            text.append("2026-05-%02dT07:00,%d,,nothing\n".formatted(3 + day, 97 - 3 * day));
        }
        Path file =
                Files.writeString(folder.resolve("n.csv"), text.toString().replace(",", separator));
        FakeTerminal terminal = new FakeTerminal();
        int code = run(terminal, "--notes", file.toString(), "--sets-full", "by-hand");
        assertEquals(ExitCodes.OK, code, terminal.err());
        assertTrue(
                terminal.out()
                        .startsWith(
                                "These 9 notes point to one cause: zero error, downward, 50.0 mA,"
                                        + " 3.0 points a\nday."),
                terminal.out());
        assertTrue(terminal.out().contains("Check: all loads and chargers off for 24 h"));
        assertEquals("", terminal.err());
    }

    /** Place, what was found, what is expected, an example; nothing else is printed. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "|1:1|the file is empty|expected time,shown,word",
                "time,shown\\n0,\"90\\n12,80\\n|2:3|not a number|expected a percent such as 82",
                "time,shown,shown\\n0,90,90|1:12|is there twice|expected it once",
                "time,word\\n0,nothing|1:1|no column 'shown'|expected time,shown,word",
                "time,shown,mood\\n0,90,glad|1:12|no such column 'mood'|expected some of time",
                "time,shown\\n0,90\\n0,91\\n|3:1|is not later|expected notes in order of time",
                "time,shown\\n0,90\\n5,\\n|3:3|the cell is empty|expected a percent such as 82",
                "time,shown\\n0,90\\n5,7000\\n|3:3|cannot be|expected a percent such as 82",
                "time,shown\\n0,90\\n5,eighty\\n|3:3|not a number|expected a percent such as 82",
                "time,shown,ah\\n0,90,x\\n|2:6|not a number|expected amp-hours shown, such as",
                "time,shown,charged\\n0,90,-3\\n|2:6|cannot be|expected amp-hours put in, such as",
                "time,shown,volts\\n0,90,?\\n|2:6|not a number|expected volts such as 12.7",
                "time,shown,word\\n0,90,sad\\n|2:6|no word known|expected one of charger-finished",
                "time,shown\\nsoon,90\\n|2:1|soon|expected for instance 2026-05-03T07:00",
                "time,shown\\n0,90\\n9,80\\n|1:1|2 notes say too little|expected four or more",
                "time,shown\\n0,9\\n1,9\\n2,9\\n3,9|1:1|4 notes say too little|expected four or"
            })
    void everyKindOfWrongNotesIsTold(String text, String place, String found, String expected)
            throws IOException {
        String written = text == null ? "" : text.replace("\\n", "\n");
        Path file = Files.writeString(folder.resolve("n.csv"), written);
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--notes", file.toString()));
        for (String part : List.of("n.csv:" + place + ": ", found, expected)) {
            assertTrue(terminal.err().contains(part), part + " in " + terminal.err());
        }
        assertEquals("", terminal.out());
    }

    @Test
    void notesThatAreNotThereAreTold() {
        FakeTerminal terminal = new FakeTerminal();
        String file = folder.resolve("none.csv").toString();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--notes", file));
        assertTrue(terminal.err().contains("none.csv:1:1: there is no such file; expected"));
        FakeTerminal one = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(one, "--notes", folder.toString()));
        assertTrue(
                one.err().contains("this is a folder; expected notes such as time,shown,word"),
                one.err());
    }
}
