package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.report.SvgLabels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AheadCommandTest {
    private static final List<String> HUT =
            List.of(
                    "ahead",
                    "--voltage",
                    "12 V",
                    "--chemistry",
                    "lifepo4",
                    "--capacity",
                    "40 Ah",
                    "--load",
                    "logger: 200 mA, 24 h",
                    "--charger",
                    "5 A");

    @TempDir private Path folder;

    private static int run(FakeTerminal terminal, String... more) {
        List<String> all = new ArrayList<>(HUT);
        all.addAll(List.of(more));
        return terminal.run(all.toArray(new String[0]));
    }

    @Test
    void theFirstLineIsTheAnswer() {
        FakeTerminal terminal = new FakeTerminal();
        int code = run(terminal, "--own-current", "12 mA", "--zero-error", "5 mA");
        assertEquals(ExitCodes.OK, code, terminal.err());
        assertTrue(
                terminal.out().startsWith("Fully charge it and set it to 100 % at least every 8"),
                terminal.out());
        assertTrue(terminal.out().contains("What decides it: the gauge's own current."));
        assertTrue(terminal.out().lines().allMatch(line -> line.length() <= 80), terminal.out());
    }

    @Test
    void jsonAndScenarioTogetherAreRefused() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--json", "--scenario"));
        assertTrue(terminal.err().contains("either --json or --scenario"), terminal.err());
        assertEquals("", terminal.out());
    }

    /** By hand: 12 mA over a day are 0.288 Ah, of 40 Ah 0.72 points. */
    @Test
    void jsonSaysTheSame() throws IOException {
        FakeTerminal text = new FakeTerminal();
        FakeTerminal terminal = new FakeTerminal();
        run(text, "--own-current", "12 mA", "--zero-error", "5 mA");
        int code = run(terminal, "--own-current", "12 mA", "--zero-error", "5 mA", "--json");
        assertEquals(ExitCodes.OK, code, terminal.err());
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        String answer = json.get("answer").asText();
        assertTrue(text.out().replace('\n', ' ').startsWith(answer), answer);
        assertTrue(answer.contains("every " + json.get("daysWithinTenPoints").asInt() + " days"));
        JsonNode first = json.get("reasons").get(0);
        assertEquals("the gauge's own current", first.get("what").asText());
        assertEquals(0.288, first.get("perDayAh").asDouble(), 1e-9);
        assertEquals(0.72, first.get("pointsPerDay").asDouble(), 1e-9);
        JsonNode day = json.get("hours").get(24);
        assertEquals(24, day.get("atHour").asInt());
        // A day of it alone; the zero error and the rest may only take more.
        double lost = day.get("shownPercent").asDouble() - day.get("leftPercent").asDouble();
        assertTrue(lost > 0.72 && lost < 3, day.toString());
        assertTrue(json.get("cautions").get(0).asText().contains("local code"));
    }

    @Test
    void theScenarioBehindItRuns() throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, run(terminal, "--scenario", "--own-current", "12 mA"));
        Path file = Files.writeString(folder.resolve("own.yaml"), terminal.out());
        FakeTerminal again = new FakeTerminal();
        assertEquals(ExitCodes.OK, again.run("run", file.toString()), again.err());
    }

    @Test
    void thePictureShowsTheDay() throws IOException {
        Path place = folder.resolve("month.svg");
        FakeTerminal terminal = new FakeTerminal();
        int code = run(terminal, "--own-current", "12 mA", "--picture", place.toString());
        assertEquals(ExitCodes.OK, code, terminal.err());
        String svg = Files.readString(place);
        assertTrue(svg.contains("charge fully by day "), svg);
        assertTrue(svg.contains("your gauge"), svg);
        assertEquals(List.of(), SvgLabels.troubles(svg));
        FakeTerminal drained = new FakeTerminal();
        Path none = folder.resolve("none.svg");
        int refused = run(drained, "--load", "heater: 5 A, 20 h", "--picture", none.toString());
        assertEquals(ExitCodes.WRONG_INPUT, refused);
        assertFalse(Files.exists(none));
    }

    @Test
    void whatIsWrongIsTold() {
        FakeTerminal terminal = new FakeTerminal();
        int code =
                run(
                        terminal,
                        "--sets-full",
                        "yes",
                        "--own-current",
                        "3",
                        "--efficiency-set",
                        "3 %",
                        "--past-shunt",
                        "-1 A",
                        "--longest-hours",
                        "0 h");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        for (String word :
                List.of(
                        "expected one of never, by-hand, volts, volts-and-current, not-known",
                        "without a unit",
                        "50 % to 100 %",
                        "--past-shunt",
                        "--longest-hours")) {
            assertTrue(terminal.err().contains(word), word + " in " + terminal.err());
        }
        FakeTerminal known = new FakeTerminal();
        assertEquals(
                ExitCodes.OK,
                run(known, "--sets-full", "not-known", "--own-current", "not-known"),
                known.err());
    }

    @Test
    void noUsualShuntIsLargeEnough() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--load", "crane: 900 A, 1 min"));
        assertTrue(terminal.err().contains("--shunt"), terminal.err());
    }

    /**
     * A person answers for system and gauge; a wrong answer is asked again, an empty one is fine.
     */
    @Test
    void onATerminalItAsksForTheGaugeToo() {
        String answers =
                """
                12 V
                lead-acid-agm
                60 Ah

                lamp: 1 A, 5 h

                15 A
                volts
                stop
                stops
                full

                6 Ah
                99 h
                5 mA
                2 mA
                """;
        FakeTerminal terminal = FakeTerminal.answering(answers);
        int code = terminal.run("ahead");
        String asked = terminal.err();
        assertEquals(ExitCodes.OK, code, asked);
        String answer = terminal.out();
        assertTrue(asked.contains("but found 'stop'"), asked);
        for (String told :
                List.of(
                        "sets itself to 100 % as soon as the volts are high",
                        "- stops counting at 100 %\n",
                        "shows 100 % after its wire was off",
                        "shows at most 99 hours",
                        "its smallest step is not known")) {
            assertTrue(answer.contains(told), told + " in " + answer);
        }
    }
}
