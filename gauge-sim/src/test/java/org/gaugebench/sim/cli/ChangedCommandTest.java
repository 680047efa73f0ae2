package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangedCommandTest {
    private static int run(FakeTerminal terminal, String... more) {
        List<String> all =
                new ArrayList<>(List.of("changed", "--voltage", "12 V", "--chemistry", "lifepo4"));
        all.addAll(List.of("--capacity", "40 Ah", "--load", "logger: 200 mA, 24 h"));
        all.addAll(List.of(more));
        return terminal.run(all.toArray(new String[0]));
    }

    @ParameterizedTest
    @CsvSource({
        "--battery-swapped, 60 Ah, Do not believe the figure until",
        "--second-battery, 40 Ah, Type in 80 Ah",
        "--stored, 8 weeks, After 8 weeks stored",
        "--stored, 56 d, After 8 weeks stored",
        "--stored, 1 week, After 7 days stored",
        "--winter, -5 °C, At -5 °C the lights go out",
        "--wire-off, 20 min, After 20 minutes without its wire",
        "--wire-off, 1 h 30 min, After 1.5 hours without its wire"
    })
    void theAnswerComesFirstAndFitsTheTerminal(String option, String amount, String answer) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, run(terminal, option, amount), terminal.err());
        String out = terminal.out();
        assertTrue(out.startsWith(answer), out);
        assertTrue(out.lines().allMatch(line -> line.length() <= 80), out);
        for (String each :
                List.of(
                        "How far the figure can be believed until then",
                        "within 10 points for another",
                        "What to redo, in this order",
                        "What was assumed",
                        "licensed")) {
            assertTrue(out.contains(each), out);
        }
    }

    /** By hand: 200 mA for 20 min are 0.067 Ah of 40 Ah. */
    @Test
    void jsonAndScenarioTogetherAreRefused() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(
                ExitCodes.WRONG_INPUT, run(terminal, "--wire-off", "1 h", "--json", "--scenario"));
        assertTrue(terminal.err().contains("either --json or --scenario"), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void jsonSaysTheSame() throws Exception {
        FakeTerminal terminal = new FakeTerminal();
        int code =
                run(
                        terminal,
                        "--wire-off",
                        "20 min",
                        "--after-off",
                        "keeps",
                        "--json",
                        "--shown=90 %");
        assertEquals(ExitCodes.OK, code, terminal.err());
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        assertEquals(0.167, json.get("pointsOffAtOnce").asDouble(), 0.05);
        assertTrue(json.get("daysBelieved").asInt() > 0);
        assertTrue(json.get("answer").asText().contains("0.2 points"), terminal.out());
        assertTrue(json.get("redo").size() > 1);
        assertTrue(json.get("cautions").get(0).asText().contains("local code"));
    }

    @Test
    void theScenarioBehindItIsOneThatRuns() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, run(terminal, "--stored", "8 weeks", "--scenario"));
        assertTrue(terminal.out().startsWith("format: 1\n"), terminal.out());
    }

    @ParameterizedTest
    @CsvSource({
        "--stored, 8, --stored",
        "--stored, 0 d, expected 1 d to 366 d",
        "--stored, 60 weeks, expected 1 d to 366 d",
        "--stored, eight weeks, --stored",
        "--winter, -50 °C, expected -40 °C to 60 °C",
        "--winter, 5 V, --winter",
        "--wire-off, 10 s, expected 1 min to 30 d",
        "--battery-swapped, 0 Ah, expected 0.1 Ah to 10000 Ah",
        "--second-battery, 40 A, --second-battery"
    })
    void anAmountThatCannotBeIsRefused(String option, String amount, String message) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, option, amount), terminal.out());
        assertEquals("", terminal.out());
        assertTrue(terminal.err().contains(message), terminal.err());
        assertTrue(terminal.err().contains(amount), terminal.err());
    }

    @Test
    void everythingWrongIsToldAtOnce() {
        FakeTerminal terminal = new FakeTerminal();
        int code =
                terminal.run(
                        "changed",
                        "--stored",
                        "8 weeks",
                        "--winter",
                        "0 °C",
                        "--shown",
                        "120 %",
                        "--own-current",
                        "-1 A",
                        "--voltage",
                        "13 V");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        for (String each :
                List.of(
                        "expected exactly one thing that changed, such as --battery-swapped",
                        "--shown: expected 1 % to 100 %",
                        "--own-current",
                        "--voltage",
                        "--capacity is missing")) {
            assertTrue(terminal.err().contains(each), each + " in " + terminal.err());
        }
        FakeTerminal none = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(none));
        assertTrue(none.err().contains("such as --battery-swapped \"100 Ah\""), none.err());
    }

    @Test
    void aPersonAtATerminalIsAskedWhatChanged() {
        String answers = "\n\n\n\n5\n20 min\n12 V\nlifepo4\n40 Ah\n\nlamp: 1 A, 5 h\n\n\n";
        FakeTerminal terminal = FakeTerminal.answering(answers);
        assertEquals(ExitCodes.OK, terminal.run("changed"), terminal.err());
        assertTrue(terminal.out().startsWith("After 20 minutes without"), terminal.out());
    }
}
