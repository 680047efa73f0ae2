package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A script reads every document in one way: a line of its own that says what it is. */
class JsonHeadTest {
    @TempDir private Path folder;

    private List<String> words(String command) {
        CommandFolder files = new CommandFolder(folder);
        String checks = files.write("c.csv", "check,meter,gauge\nown-current,12 mA,\n").toString();
        String log = files.write("l.csv", "time_s,current_A\n0,1\n1,1\n2,1\n").toString();
        String week =
                FakeTerminal.scenarios().resolve("first-steps/a-week-in-the-hut.yaml").toString();
        List<String> all = new ArrayList<>(List.of(command, "--json"));
        switch (command) {
            case "run", "audit" -> all.add(week);
            case "explain" -> all.addAll(List.of("--at", "1 h", week));
            case "replay" ->
                    all.addAll(
                            List.of(
                                    "--time",
                                    "time_s",
                                    "--current",
                                    "current_A",
                                    "--positive",
                                    "charge",
                                    "--shunt",
                                    "20 A / 60 mV",
                                    "--adc",
                                    "20 bit, 100 mV",
                                    "--capacity",
                                    "60 Ah",
                                    log));
            default ->
                    all.addAll(
                            List.of(
                                    "--voltage",
                                    "12 V",
                                    "--chemistry",
                                    "lifepo4",
                                    "--capacity",
                                    "40 Ah",
                                    "--load",
                                    "logger: 200 mA, 24 h"));
        }
        if (command.equals("changed")) {
            all.addAll(List.of("--stored", "8 weeks"));
        }
        if (command.equals("symptom")) {
            all.addAll(List.of("--seen", "dark-at-30-percent"));
        }
        if (command.equals("verdict")) {
            all.add(checks);
        }
        return all;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "run", "explain", "replay", "size", "audit", "changed", "verdict", "ahead",
                "symptom"
            })
    void aDocumentIsOneLineThatSaysWhoseItIs(String command) throws JsonProcessingException {
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run(words(command).toArray(new String[0]));
        assertTrue(code == ExitCodes.OK || code == ExitCodes.FAILED, terminal.err());
        assertEquals(1, terminal.out().lines().count(), terminal.out());
        assertTrue(terminal.out().endsWith("}\n"), terminal.out());
        JsonNode document = new ObjectMapper().readTree(terminal.out());
        assertEquals(command, document.get("command").asText());
        assertTrue(document.get("formatVersion").isInt(), terminal.out());
        assertEquals(Version.text(), document.get("version").asText());
        assertEquals("", terminal.err());
    }

    @Test
    void aMomentForPeopleIsNotGivenToAProgramAsIfItWereOne() {
        List<String> all = words("run");
        all.addAll(List.of("--at", "1 h", "--junit", folder.resolve("x.xml").toString()));
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(all.toArray(new String[0])));
        assertTrue(terminal.err().contains("without --json and --junit"), terminal.err());
        assertEquals("", terminal.out());
    }
}
