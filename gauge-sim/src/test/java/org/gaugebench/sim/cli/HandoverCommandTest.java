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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheet from the command line, and its columns typed back in. */
class HandoverCommandTest {
    @TempDir private Path folder;

    private static String[] hut(String... first) {
        List<String> all = new ArrayList<>(List.of(first));
        all.addAll(List.of("--voltage", "12 V", "--chemistry", "lifepo4", "--capacity", "40 Ah"));
        all.addAll(List.of("--load", "logger: 200 mA, 24 h", "--charger", "5 A"));
        return all.toArray(new String[0]);
    }

    private Path checks(String rows) throws IOException {
        return Files.writeString(folder.resolve("checks.csv"), "check,meter,gauge\n" + rows);
    }

    @Test
    void theSheetIsWritten() throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        Path file = folder.resolve("hut.html");
        int code =
                terminal.run(
                        hut(
                                "handover",
                                file.toString(),
                                "--name",
                                "Tide-gauge hut",
                                "--source",
                                "solar",
                                "--source",
                                "mains",
                                "--charger-volts",
                                "14.2 V"));
        assertEquals(ExitCodes.OK, code, terminal.err());
        String html = Files.readString(file);
        assertTrue(html.contains("<h1>Tide-gauge hut</h1>"), html);
        assertTrue(html.contains("charger (solar)") && html.contains("charger (mains)"), html);
        assertTrue(html.contains("logger"), html);
        assertTrue(terminal.out().contains("hut.html written"), terminal.out());
    }

    @Test
    void nothingIsWrittenWhereSomethingIsWrong() throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        Path file = folder.resolve("hut.html");
        int code =
                terminal.run(
                        "handover",
                        file.toString(),
                        "--source",
                        "wind",
                        "--charger-volts",
                        "144 V",
                        "--past-full",
                        "maybe",
                        "--name",
                        "x".repeat(121),
                        "--voltage",
                        "13 V");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        for (String each :
                List.of(
                        "--source: expected one of mains, solar, other, but found 'wind'",
                        "--charger-volts: expected 10 V to 70 V, such as \"14.4 V\"",
                        "--past-full",
                        "--name: expected at most 120 letters",
                        "--voltage",
                        "--chemistry is missing")) {
            assertTrue(terminal.err().contains(each), each + " in " + terminal.err());
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(), left.toList());
        }
        FakeTerminal huge = new FakeTerminal();
        code = huge.run(hut("handover", file.toString(), "--load", "winch: 5000 A, 1 h"));
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertTrue(huge.err().contains("--shunt \"500 A / 75 mV\""), huge.err());
        assertFalse(Files.exists(file));
        FakeTerminal nowhere = new FakeTerminal();
        code = nowhere.run(hut("handover", folder.resolve("none/x.html").toString()));
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertTrue(nowhere.err().contains("such as my-system.html"), nowhere.err());
    }

    @Test
    void goodColumnsGiveAGoodVerdict() throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        Path file =
                checks("zero-test,24 h,-0.1 Ah\nown-current,12 mA,\nscale-working,-4.8 A,-4.9 A\n");
        int code = terminal.run(hut("verdict", file.toString(), "--own-current", "12 mA"));
        assertEquals(ExitCodes.OK, code, terminal.out() + terminal.err());
        assertTrue(terminal.out().startsWith("3 of 3 checks ask for nothing"), terminal.out());
        assertTrue(terminal.out().contains("Not done yet"), terminal.out());
        assertTrue(terminal.out().lines().allMatch(it -> it.length() <= 80), terminal.out());
    }

    @Test
    void badColumnsAskForSomething() throws Exception {
        Path file = checks("zero-test,24 h,-1.2 Ah\nscale-working,-4.8 A,4.8 A\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.FAILED, terminal.run(hut("verdict", file.toString())));
        assertTrue(
                terminal.out().startsWith("2 of 2 checks ask for something, first the zero test:"),
                terminal.out());
        String flat = terminal.out().replaceAll("\\s+", " ");
        assertTrue(flat.contains("is the other way round"), flat);
        assertTrue(flat.contains("do not go by the figure until its amps are right"), flat);
        FakeTerminal json = new FakeTerminal();
        assertEquals(ExitCodes.FAILED, json.run(hut("verdict", file.toString(), "--json")));
        JsonNode tree = new ObjectMapper().readTree(json.out());
        assertEquals("change", tree.get("checks").get(0).get("verdict").asText());
        assertEquals(5, tree.get("missing").size());
        assertTrue(tree.get("daysWithinTenNow").asInt() < tree.get("daysWithinTenBefore").asInt());
    }

    @Test
    void aWrongFileIsToldWithItsPlaceBesideTheRest() throws IOException {
        Path file = checks("zero-test,24,-1.2 Ah\n");
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run("verdict", file.toString(), "--voltage", "13 V");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertEquals("", terminal.out());
        for (String each :
                List.of("checks.csv:2:11: expected a time such as 2 h 30 min", "--voltage")) {
            assertTrue(terminal.err().contains(each), each + " in " + terminal.err());
        }
    }
}
