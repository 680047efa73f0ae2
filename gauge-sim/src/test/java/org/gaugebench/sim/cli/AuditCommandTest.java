package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
}
