package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.report.Page;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The split on the command line: it comes behind the report and changes nothing of it. */
class AttributionCommandTest {
    @TempDir Path folder;
    private String hut = "";

    /** 10 % declared too low of 50 Ah, and a claim that fails at 6 h because of it. */
    @BeforeEach
    void writeScenario() throws IOException {
        String text =
                Samples.expecting("at: 6 h, reading: state-of-charge, within: 1 %, of: truth");
        hut = write("hut.yaml", text + "gauge: {start: 50 %}\n");
    }

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private static String run(int exitCode, String... args) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(exitCode, terminal.run(args), terminal.err());
        return terminal.out();
    }

    @Test
    void theTablesStandBehindTheReport() {
        String plain = run(1, "run", hut);
        String split = run(1, "run", "--attribution", hut);
        assertTrue(split.startsWith(plain), split);
        String tables = split.substring(plain.length());
        int failed = tables.indexOf("Where the error of gauge comes from, at 0 d 06:00:00");
        int end = tables.indexOf("Where the error of gauge comes from, at 1 d 00:00:00");
        assertTrue(failed >= 0 && end > failed, tables);
        String start =
                "    not really full at the start: what was declared       -5.0000     -10.00";
        assertTrue(tables.substring(end).contains(start), tables);
        assertTrue(tables.lines().allMatch(line -> line.length() <= Page.WIDTH), tables);
        assertFalse(plain.contains("Where the error"), plain);
    }

    @Test
    void aMomentHasItsTable() {
        String plain = run(0, "run", "--at", "3 h", hut);
        String split = run(0, "run", "--at", "3 h", "--attribution", hut);
        assertTrue(split.startsWith(plain + "\nWhere the error of gauge comes from, at 0 d 03:"));
    }

    @Test
    void theObjectHasTheSameFigures() throws IOException {
        String plain = run(1, "run", "--json", hut).strip();
        String split = run(1, "run", "--json", "--attribution", hut).strip();
        String same = plain.substring(0, plain.length() - 1);
        assertTrue(split.startsWith(same + ",\"attribution\":{"), split);
        JsonNode moments = new ObjectMapper().readTree(split).get("attribution").get("moments");
        assertEquals(2, moments.size());
        for (JsonNode moment : moments) {
            assertTrue(moment.get("known").asBoolean());
            long error = moment.get("errorNanocoulombs").asLong();
            for (String list : new String[] {"plain", "causes"}) {
                long sum = 0;
                for (JsonNode cause : moment.get(list)) {
                    sum += cause.get("errorNanocoulombs").asLong();
                }
                assertEquals(error, sum, list);
            }
        }
    }

    @Test
    void onlyACoreIsSplit() throws IOException {
        String plain = write("plain.yaml", Samples.hut() + "gauge: {kind: plain-counter}\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(2, terminal.run("run", "--attribution", hut, plain));
        assertEquals("", terminal.out());
        assertTrue(
                terminal.err().contains("plain.yaml is of kind plain-counter; expected kind core"),
                terminal.err());
    }
}
