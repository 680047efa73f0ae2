package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is far from any hut is answered or refused in words, and is never a defect. */
class ExtremeOptionsTest {
    @TempDir private Path folder;

    private FakeTerminal run(List<String> command, String capacity, List<String> more) {
        List<String> all = new ArrayList<>(command);
        all.addAll(List.of("--voltage", "12 V", "--chemistry", "lifepo4", "--capacity", capacity));
        all.addAll(more);
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run(all.toArray(new String[0]));
        assertFalse(code == ExitCodes.OUR_BUG, () -> all + ": " + terminal.err());
        assertTrue(code == ExitCodes.WRONG_INPUT || terminal.err().isEmpty(), terminal.err());
        assertEquals(code == ExitCodes.WRONG_INPUT, terminal.out().isEmpty(), terminal.out());
        return terminal;
    }

    private List<List<String>> commands() {
        return List.of(
                List.of("ahead"),
                List.of("audit"),
                List.of("changed", "--wire-off", "30 d"),
                List.of("symptom", "--seen", "dark-at-30-percent"),
                List.of("handover", folder.resolve("sheet.html").toString()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--own-current | 5 A | --own-current: expected 0 A to 1 A, such as \"12 mA\"",
                "--past-shunt | 2001 A | expected 0 A to 2000 A, such as \"20 mA\", or not-known",
                "--smallest-amps | -1 A | expected 0 A to 10000 A, such as \"100 mA\", or"
                        + " not-known",
                "--smallest-amp-hours | 101 Ah | expected 0 Ah to 100 Ah, such as \"0.1 Ah\", or"
                        + " not",
                "--longest-hours | 1.5 h | --longest-hours: 5400 s is finer than 1 h, the smallest",
                "--longest-hours | 1.5 h | step here; expected 1 h to 10000 h, such as \"99 h\", or"
                        + " not",
                "--longest-hours | 1.5 h | not-known, but found '1.5 h'",
                "--efficiency-set | 20 % | expected 50 % to 100 %, such as \"95 %\", or not-known,"
                        + " but",
                "--charger | -1 A | expected 0 A to 10000 A, such as \"20 A\", but found '-1 A'",
                "--coldest | 81 °C | expected -60 °C to 80 °C, such as \"-5 °C\", but found '81"
                        + " °C'",
                "--usable | 5 % | expected 10 % to 100 %, such as \"80 %\", but found '5 %'",
                "--zero-error | 100 A | --zero-error: with the shunt 50 A / 75 mV, expected",
                "--shunt | 5000 A / 75 mV | --shunt: for a run, expected a shunt of 1 A to 2000 A",
                "--shunt | 50 A / 5 mV | --shunt: for a run, expected a shunt of 1 A to 2000 A",
                "--shunt | 50.0005 A / 75 mV | in whole milliamps",
                "--adc | 8 bit, 100 mV | --adc: for a run, expected a converter of 12 to 24 bit",
                "--adc | 20 bit, 5 V | and 10 mV to 1 V, such as 20 bit, 100 mV",
                "--load | winch: 5000 A, 1 min | no usual shunt carries these currents",
            })
    void whatNoRunCanBeMadeOfIsRefusedInWords(String option, String value, String message) {
        for (List<String> each : commands()) {
            FakeTerminal terminal = run(each, "100 Ah", List.of(option, value));
            assertTrue(terminal.err().contains(message), each + ": " + terminal.err());
            assertTrue(terminal.err().contains("such as"), terminal.err());
        }
    }

    @Test
    void loadsAndChargersBeyondAScenarioAreRefusedWhereAShuntIsThere() {
        List<String> there = List.of("--shunt", "2000 A / 50 mV");
        for (List<String> each : commands()) {
            List<String> load = new ArrayList<>(there);
            load.addAll(List.of("--load", "winch: 2001 A, 1 min"));
            String said = run(each, "100 Ah", load).err();
            assertTrue(said.contains("--load: for a run, expected a load of at most 2000 A"), said);
            List<String> charger = new ArrayList<>(there);
            charger.addAll(List.of("--charger", "1500 A", "--charger", "501 A"));
            said = run(each, "100 Ah", charger).err();
            assertTrue(said.contains("--charger: for a run, expected at most 2000 A"), said);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--coldest=-40 °C",
                "--coldest=-60 °C;--own-current=1 A;--zero-error=66 A;--smallest-amps=10000 A",
                "--coldest=80 °C;--smallest-amp-hours=100 Ah;--longest-hours=10000 h"
                        + ";--load=better: 1 A, 1 h;--load=charger: 2 uW, 1 h, idle 1 uA",
            })
    void whatIsAcceptedIsAnswered(String options) {
        for (List<String> each : commands()) {
            for (String capacity : List.of("0.1 Ah", "33.3333 Ah", "10000 Ah")) {
                assertEquals("", run(each, capacity, List.of(options.split(";"))).err());
            }
        }
    }

    /** Its file once had that load twice. */
    @Test
    void aLoadMayHaveTheNameThatTheScenarioGivesToWhatIsUnseen() {
        List<String> more = List.of("--load", "unseen: 1 A, 1 h", "--past-shunt", "20 mA");
        for (List<String> each : commands()) {
            assertEquals("", run(each, "100 Ah", more).err());
        }
    }

    @Test
    void fortyLoadsAreAnswered() {
        List<String> more = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            more.add("--load");
            more.add("thing %d: %d mA, %d h, idle 1 mA".formatted(i, i + 1, i % 25));
        }
        for (List<String> each : commands()) {
            assertEquals("", run(each, "100 Ah", more).err());
        }
    }

    @Test
    void twoBatteriesHoldNoMoreThanAScenarioSays() {
        List<String> command = List.of("changed", "--second-battery", "1 Ah");
        String said = run(command, "10000 Ah", List.of()).err();
        assertTrue(said.startsWith("--second-battery: expected so much that both"), said);
        assertEquals("", run(command, "9999 Ah", List.of()).err());
    }
}
