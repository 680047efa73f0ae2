package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One moment on the command line: as text, as an object, as the guide prints it; and errors. */
class ExplainCommandTest {
    @TempDir Path folder;
    private String hut = "";

    @BeforeEach
    void writeScenario() throws IOException {
        hut =
                write(
                        "hut.yaml",
                        Samples.hut() + "beside: [{name: other, kind: core, start: 40 %}]\n");
    }

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private static String refused(String... args) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(args));
        assertEquals("", terminal.out());
        return terminal.err().replaceAll("\\s+", " ");
    }

    private static String shown(String... args) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(args), terminal.err());
        return terminal.out();
    }

    @ParameterizedTest
    @CsvSource({
        "9 d, '--at: 9 d 00:00:00 lies after the run, which ends at 1 d 00:00:00'",
        "soon, 'is no moment; expected one such as'",
        "-5 s, '--at: a run begins at 0 d 00:00:00; expected a moment of it'",
        "5 mA, 'is no moment; expected one such as'"
    })
    void aMomentMustBeOneOfTheRun(String at, String message) {
        String error = refused("explain", "--at=" + at, hut);
        assertTrue(error.contains(message), error);
    }

    @Test
    void aMomentIsAskedFor() {
        assertTrue(refused("explain", hut).contains("--at"));
    }

    @Test
    void oneRunIsExplained() throws IOException {
        String several = write("several.yaml", Samples.hut() + "vary: {seed: [1, 2]}\n");
        String error = refused("explain", "--at", "1 h", several);
        assertTrue(error.contains("a moment belongs to one scenario; the file makes 2"), error);
        assertTrue(error.contains("choose one with --variant, such as 'seed=2'"), error);
        String page = shown("explain", "--at", "1 h", "--variant", "seed=2", several);
        assertTrue(page.contains("[seed=2], seed 2"), page);
    }

    @Test
    void aGaugeIsChosenByName() throws IOException {
        assertTrue(shown("explain", "--at", "1 h", hut).startsWith("gauge shows "));
        String other = shown("explain", "--at", "1 h", "--gauge", "other", hut);
        assertTrue(other.startsWith("other shows 38.00 %"), other);
        String error = refused("explain", "--at", "1 h", "--gauge", "othr", hut);
        assertTrue(error.contains("no gauge is called 'othr'; did you mean 'other'?"), error);
        String plain = write("plain.yaml", Samples.hut() + "gauge: {kind: plain-counter}\n");
        error = refused("explain", "--at", "1 h", plain);
        assertTrue(error.contains("'gauge' is of kind plain-counter; expected one of"), error);
    }

    @Test
    void theObjectHasTheSameSteps() throws IOException {
        JsonNode object =
                new ObjectMapper().readTree(shown("explain", "--at", "1 h", "--json", hut));
        assertEquals("gauge", object.get("gauge").asText());
        assertEquals(3_600, object.get("atSeconds").asLong());
        assertEquals(0, object.get("contradictions").asInt());
        String page = shown("explain", "--at", "1 h", hut).replaceAll("\\s+", " ");
        int calculations = 0;
        for (JsonNode section : object.get("sections")) {
            for (JsonNode step : section.get("steps")) {
                if (step.has("calculation")) {
                    calculations++;
                    String line = step.get("calculation").asText();
                    String joint = step.get("result").isTextual() ? ": " : " = ";
                    assertTrue(page.contains(line + joint + step.get("result").asText()), line);
                }
            }
        }
        assertTrue(calculations > 60, "calculations: " + calculations);
    }

    /** The guide leaves lines out, but prints none that the program does not print there. */
    @Test
    void theGuidePrintsWhatTheProgramPrints() throws IOException {
        Path root = FakeTerminal.scenarios().getParent();
        String guide = Files.readString(root.resolve("gauge-sim/docs/user-guide.md"));
        String section = guide.substring(guide.indexOf("## explain:"));
        String example = section.split("```\n", -1)[3];
        String week = root.resolve("scenarios/first-steps/a-week-in-the-hut.yaml").toString();
        String page =
                shown("explain", "--at", "2 d 21:56:00", week)
                        .replace(root + "/scenarios", "scenarios");
        int from = 0;
        for (String line : example.lines().toList()) {
            if (line.isBlank() || line.strip().equals("...")) {
                continue;
            }
            int found = page.indexOf(line + "\n", from);
            assertTrue(found >= 0, "not printed, or not in this order: " + line);
            from = found + line.length();
        }
        assertTrue(from > page.length() / 2, "the example ends early");
    }
}
