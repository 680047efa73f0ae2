package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.report.SvgLabels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SizeCommandTest {
    @TempDir private Path folder;

    private static final String[] HUT = {
        "size",
        "--voltage",
        "12 V",
        "--chemistry",
        "lead-acid-agm",
        "--capacity",
        "100 Ah",
        "--load",
        "lamp: 1.2 A, 5 h",
        "--load",
        "fridge: 45 W, 8 h, surge 120 W",
        "--charger",
        "20 A"
    };

    private static String[] hut(String... more) {
        String[] all = new String[HUT.length + more.length];
        System.arraycopy(HUT, 0, all, 0, HUT.length);
        System.arraycopy(more, 0, all, HUT.length, more.length);
        return all;
    }

    @Test
    void theAnswerComesFirstAndFitsTheTerminal() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(HUT), terminal.err());
        assertTrue(
                terminal.out()
                        .startsWith("Take a shunt of 50 A / 75 mV: each microvolt of offset costs"),
                terminal.out());
        assertTrue(terminal.out().lines().allMatch(line -> line.length() <= 80), terminal.out());
        assertTrue(terminal.out().contains("licensed"), terminal.out());
    }

    @Test
    void aShuntThatIsTooSmallIsAFinding() {
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run(hut("--load", "winch: 80 A, 10 min", "--shunt", "100 A / 75 mV"));
        assertEquals(ExitCodes.FAILED, code);
        assertTrue(
                terminal.out().startsWith("Your shunt does not fit; take one of 150 A / 75 mV."),
                terminal.out());
        assertTrue(terminal.out().contains("two thirds"), terminal.out());
    }

    @Test
    void thePictureHasTheProposedShuntAndItsNeighbours() throws Exception {
        Path picture = folder.resolve("shunt.svg");
        FakeTerminal terminal = new FakeTerminal();
        String[] words = hut("--load", "winch: 60 A, 10 min", "--picture", picture.toString());
        assertEquals(ExitCodes.OK, terminal.run(words), terminal.err());
        String drawn = Files.readString(picture);
        assertEquals(List.of(), SvgLabels.troubles(drawn));
        assertTrue(drawn.contains("<title id=\"title\">Which shunt</title>"), drawn);
        String chosen = terminal.out().replaceFirst("(?s).*\n \\* (\\d+ A / 75 mV).*", "$1");
        assertTrue(drawn.contains(">* " + chosen + "</text>"), drawn);
        for (String line : terminal.out().split("\n", -1)) {
            if (line.matches("[ *]+\\d+ A / 75 mV .* mV .*")) {
                String[] figures = line.replace("*", "").strip().split(" +", -1);
                String shunt = String.join(" ", Arrays.copyOf(figures, 5));
                assertTrue(drawn.contains(shunt + "</text>"), shunt);
            }
        }
        assertTrue(drawn.contains("% of this battery per month"), drawn);
        assertTrue(drawn.contains("local code"), drawn);
    }

    @Test
    void aPictureThatCannotBeWrittenIsRefused() {
        FakeTerminal terminal = new FakeTerminal();
        Path nowhere = folder.resolve("no").resolve("shunt.svg");
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(hut("--picture", nowhere.toString())));
        assertTrue(terminal.err().contains("--picture: cannot write"), terminal.err());
        assertTrue(terminal.err().contains("such as shunt.svg"), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void jsonSaysTheSame() throws Exception {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(hut("--json")));
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        assertEquals("50 A / 75 mV", json.get("chosenShunt").asText());
        assertEquals(0.48, json.get("shunts").get(0).get("microvoltPercentPerMonth").asDouble());
        assertEquals(6, json.get("loadsPerDayAh").get("lamp").asDouble());
        assertTrue(json.get("cautions").get(0).asText().contains("local code"));
    }

    @Test
    void everythingWrongIsToldAtOnce() {
        FakeTerminal terminal = new FakeTerminal();
        int code =
                terminal.run(
                        "size",
                        "--voltage",
                        "13 V",
                        "--load",
                        "a: 1 A, 1 h",
                        "--load",
                        "a: 2 A, 1 h",
                        "--load",
                        "b: 10 W, 1 h, inverter",
                        "--charger",
                        "-1 A");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertEquals("", terminal.out());
        for (String word :
                new String[] {
                    "--voltage",
                    "--chemistry is missing",
                    "--capacity is missing",
                    "twice",
                    "--inverter is missing",
                    "--charger"
                }) {
            assertTrue(terminal.err().contains(word), word + " in " + terminal.err());
        }
    }

    @Test
    void aPersonAtATerminalIsAsked() {
        String answers = "13 V\n12 V\nlead-acid-agm\n\n100 Ah\n\nlamp: 1.2 A, 5 h\nlamp\n\n20 A\n";
        FakeTerminal terminal = FakeTerminal.answering(answers);
        assertEquals(ExitCodes.OK, terminal.run("size"));
        String asked = terminal.err();
        assertTrue(asked.contains("expected 12 V, 24 V, 36 V or 48 V, but found '13 V'"), asked);
        assertTrue(asked.contains("This one is needed."), asked);
        assertTrue(asked.contains("a name before a colon is missing"), asked);
        assertTrue(terminal.out().startsWith("Take a shunt of 50 A"));
    }

    @Test
    void answersThatEndEarlyAreNoDefect() {
        FakeTerminal terminal = FakeTerminal.answering("12 V\n");
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("size"));
        assertTrue(terminal.err().contains("ended before"), terminal.err());
    }

    @Test
    void aPictureWithoutANameIsToldAsThat() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(hut("--picture", "")));
        assertEquals(
                "--picture: no file is named; expected one such as shunt.svg\n", terminal.err());
    }
}
