package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AuditCommandTest {
    @TempDir private Path folder;

    private static String shelf(String name) {
        return FakeTerminal.scenarios().resolve("edge-cases").resolve(name + ".yaml").toString();
    }

    @Test
    void aMistakeOfTheShelfIsNamedWithItsRemedy() {
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run("audit", shelf("half-kept-back-from-a-lithium-bank"));
        assertEquals(ExitCodes.FAILED, code, terminal.err());
        assertTrue(terminal.out().startsWith("1 setting does not go with"), terminal.out());
        assertTrue(terminal.out().contains("(kept-back)"), terminal.out());
        assertTrue(terminal.out().contains("remedy       kept-back-charge: 10 %"), terminal.out());
        assertTrue(terminal.out().contains("shown by the run"), terminal.out());
    }

    @Test
    void aRightSystemRaisesNothing() {
        FakeTerminal terminal = new FakeTerminal();
        Path week =
                FakeTerminal.scenarios().resolve("first-steps").resolve("a-week-in-the-hut.yaml");
        assertEquals(ExitCodes.OK, terminal.run("audit", week.toString()), terminal.out());
        assertTrue(terminal.out().startsWith("Nothing found"), terminal.out());
    }

    @Test
    void jsonSaysTheSame() throws Exception {
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run("audit", "--json", shelf("another-shunt-than-was-entered"));
        assertEquals(ExitCodes.FAILED, code);
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        assertEquals("shunt", json.get("findings").get(0).get("key").asText());
        assertTrue(json.get("findings").get(0).get("remedy").size() > 0);
    }

    @Test
    void aGaugeWithoutSettingsIsRefused() throws Exception {
        Path file =
                Files.writeString(
                        folder.resolve("plain.yaml"),
                        """
                        format: 1
                        title: A plain counter
                        duration: 1 h
                        battery: {chemistry: lifepo4, capacity: 10 Ah}
                        sensor: {shunt: 50 A / 75 mV}
                        gauge: {kind: plain-counter}
                        """);
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("audit", file.toString()));
        assertTrue(terminal.err().contains("kind: core"), terminal.err());
    }

    private static final String[] OWN = {
        "audit",
        "--voltage",
        "12 V",
        "--chemistry",
        "lead-acid-agm",
        "--capacity",
        "100 Ah",
        "--load",
        "lamp: 1.2 A, 5 h",
        "--charger",
        "20 A",
        "--charger-volts",
        "14.4 V"
    };

    private static String[] own(String... more) {
        String[] all = Arrays.copyOf(OWN, OWN.length + more.length);
        System.arraycopy(more, 0, all, OWN.length, more.length);
        return all;
    }

    @Test
    void aSystemOfOnesOwnWithUsualSettingsRaisesNothing() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(own()), terminal.out() + terminal.err());
        assertTrue(terminal.out().startsWith("Nothing found"), terminal.out());
        assertTrue(terminal.out().contains("What was assumed"), terminal.out());
        assertTrue(terminal.out().contains("it looks for full from 14.2 V, as usual"));
    }

    @ParameterizedTest
    @CsvSource({
        "--typed-capacity, 50 Ah, capacity-usable",
        "--full-volts, 14.6 V, threshold-above-charger",
        "--full-amps, 15 %, taper-wide",
        "--full-amps, 0.2 A, taper-below-end",
        "--full-minutes, 2 min, hold-short",
        "--efficiency-set, 80 %, efficiency",
        "--typed-shunt, 500 A / 50 mV, shunt",
        "--typed-chemistry, lifepo4, chemistry",
        "--full-volts, 0 V, full-rule-off"
    })
    void eachSettingThatIsTypedWronglyIsFound(String option, String value, String key) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.FAILED, terminal.run(own(option, value)), terminal.err());
        assertTrue(terminal.out().contains("(" + key + ")"), terminal.out());
    }

    /** Put right, the gauge of this run would set itself to full at 92.1 %. */
    @Test
    void whatWouldBeWorseCuredIsNotToldAsWrong() {
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run("audit", shelf("a-frozen-battery-takes-little"));
        assertEquals(ExitCodes.OK, code, terminal.out());
    }

    @Test
    void whatAGaugeDoesItselfStandsInTheFirstLine() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(own("--sets-full", "volts")), terminal.err());
        assertTrue(terminal.out().startsWith("No setting is wrong, but"), terminal.out());
        assertTrue(terminal.out().contains("it looks at the volts alone"), terminal.out());
    }

    @Test
    void jsonOfASystemOfOnesOwnIsComplete() throws Exception {
        FakeTerminal terminal = new FakeTerminal();
        terminal.run(own("--typed-capacity", "50 Ah", "--json"));
        JsonNode json = new ObjectMapper().readTree(terminal.out());
        assertEquals("capacity-usable", json.get("findings").get(0).get("key").asText());
        assertTrue(json.get("assumed").size() > 1);
        assertTrue(json.get("scenarioText").asText().startsWith("format: 1"));
        assertTrue(json.get("cautions").get(0).asText().contains("local code"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "week.yaml --typed-capacity 50Ah | a scenario FILE, which tells gauge, settings",
                "week.yaml --sets-full volts | a scenario FILE, which tells gauge, settings",
                "week.yaml --charger-volts 14V | a scenario FILE, which tells gauge, settings",
                "week.yaml --scenario | the scenario is in the FILE already",
                "--json --scenario | either --json or --scenario; found both",
                "--variant night | --variant: a FILE is missing",
                "'' | '': no name of a file",
            })
    void whatWouldBeLeftAsideIsRefused(String options, String told) {
        FakeTerminal terminal = new FakeTerminal();
        String[] words = ("audit " + options).split(" ", -1);
        int code =
                terminal.run(
                        Arrays.stream(words)
                                .map(it -> it.replace("''", ""))
                                .toArray(String[]::new));
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertTrue(terminal.err().contains(told), terminal.err());
        assertEquals("", terminal.out());
    }

    @ParameterizedTest
    @CsvSource({"99 V", "11 V", "28.8 V"})
    void voltsThatNoChargerOfThisSystemGivesAreRefused(String volts) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(own("--charger-volts", volts)));
        assertTrue(
                terminal.err().contains("expected 12 V to 18 V on a system of 12 V"),
                terminal.err());
    }

    @Test
    void theDaysBehindItAreAScenarioThatRuns() throws Exception {
        FakeTerminal terminal = new FakeTerminal();
        terminal.run(own("--typed-capacity", "50 Ah", "--scenario"));
        Path file = Files.writeString(folder.resolve("own.yaml"), terminal.out());
        FakeTerminal again = new FakeTerminal();
        assertEquals(ExitCodes.FAILED, again.run("audit", file.toString()), again.err());
        assertTrue(again.out().contains("(capacity-usable)"), again.out());
    }

    @Test
    void aFileAndASystemTogetherAreRefusedAndSoIsNeither() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(own("week.yaml")));
        assertTrue(terminal.err().contains("expected either a scenario FILE"), terminal.err());
        terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("audit"));
        assertTrue(terminal.err().contains("--capacity is missing"), terminal.err());
        terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(own("--full-amps", "30 A")));
        assertTrue(terminal.err().contains("--full-amps: expected 0.1 % to 20 %"), terminal.err());
    }

    @Test
    void aPersonAtATerminalIsAskedForSettingsToo() {
        String answers =
                """
                12 V
                lead-acid-agm
                100 Ah

                lamp: 1.2 A, 5 h

                20 A
                14.4 V
                50 Ah
                14.2 V
                much
                2 A

                """;
        FakeTerminal terminal = FakeTerminal.answering(answers);
        assertEquals(ExitCodes.FAILED, terminal.run("audit"));
        String asked = terminal.err();
        assertTrue(asked.contains("Current to which it must have fallen"), asked);
        assertTrue(asked.contains("but found 'much'"), asked);
        assertTrue(terminal.out().contains("(capacity-usable)"));
    }
}
