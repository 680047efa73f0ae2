package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Vectors say all that goes into a gauge: a fresh core fed with them has the same registers. */
class VectorsCommandTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path scenario;
    private Path out;

    @BeforeEach
    void writeScenario() throws IOException {
        String told =
                Samples.hut()
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 20 min, set: {gauge.declare: 47 %}");
        scenario = Files.writeString(folder.resolve("hut.yaml"), told);
        out = folder.resolve("vectors");
    }

    private int write() {
        return terminal.run(
                "vectors", "--until", "1 h", "--out", out.toString(), scenario.toString());
    }

    @Test
    void aFreshCoreAgreesWithEachRow() throws IOException {
        assertEquals(0, write(), terminal.err());
        // power-up, declaration, the sample of time 0, one a second, and what is declared
        assertTrue(terminal.out().startsWith("3604 rows to 0 d 01:00:00"), terminal.out());
        List<String> rows = Files.readAllLines(out.resolve("vectors.csv"));
        assertEquals(
                8 + Register.values().length,
                rows.get(0).chars().filter(c -> c == ',').count() + 1);
        assertTrue(rows.get(1).startsWith("1,power-up,EXACT,0,,,,,"), rows.get(1));
        assertTrue(rows.get(2).startsWith("2,sample,,,0,"), rows.get(2));
        assertTrue(
                rows.get(3).startsWith("3,command,DECLARE_STATE_OF_CHARGE>DONE,600000,,,,,"),
                rows.get(3));
        FakeTerminal again = new FakeTerminal();
        assertEquals(0, again.run("vectors", "--check", out.toString()), again.err());
        assertEquals("3604 rows, and the core agrees with each\n", again.out());
    }

    @Test
    void aMemorysAnswersAndRestartsAreAmongTheInputs() throws IOException {
        Path shelf = FakeTerminal.scenarios().resolve("edge-cases");
        String restarts = shelf.resolve("two-days-without-power.yaml").toString();
        String[] args = {"vectors", "--until", "26 h", "--out", out.toString(), restarts};
        assertEquals(0, terminal.run(args), terminal.err());
        assertTrue(Files.readString(out.resolve("store.csv")).contains(",program,"), "it saves");
        String cuts = shelf.resolve("a-cut-in-the-middle-of-a-save.yaml").toString();
        FakeTerminal second = new FakeTerminal();
        assertEquals(0, second.run("vectors", "--out", out.toString(), cuts), second.err());
        assertFalse(
                second.out().contains(" rows to 0 d 04:00:00"), "ends before the call that is cut");
    }

    @Test
    void oneCountOrOneSettingMoreIsNoticed() throws IOException {
        assertEquals(0, write(), terminal.err());
        Path vectors = out.resolve("vectors.csv");
        String text = Files.readString(vectors);
        String row =
                text.lines().filter(l -> l.startsWith("1000,sample")).findFirst().orElseThrow();
        String[] cells = row.split(",", -1);
        cells[5] = Integer.toString(Integer.parseInt(cells[5]) + 1);
        Files.writeString(vectors, text.replace(row, String.join(",", cells)));
        FakeTerminal wrong = new FakeTerminal();
        assertEquals(1, wrong.run("vectors", "--check", out.toString()));
        assertTrue(wrong.err().contains("vectors.csv:1001: "), wrong.err());
        Files.writeString(vectors, text);
        Path settings = out.resolve("settings.csv");
        Files.writeString(
                settings, Files.readString(settings).replace("capacity,50000", "capacity,50001"));
        FakeTerminal other = new FakeTerminal();
        assertEquals(1, other.run("vectors", "--check", out.toString()));
        assertTrue(other.err().contains("CAPACITY_NANOCOULOMBS"), other.err());
    }

    private List<String> rowsOf(String changes) throws IOException {
        Files.writeString(scenario, Samples.hut().replace("at: 12 h, set: {lamp: off}", changes));
        assertEquals(0, write(), terminal.err());
        return Files.readAllLines(out.resolve("vectors.csv"));
    }

    @Test
    void aChangeOfSettingsHasARowThatBothReadersNeed() throws IOException {
        List<String> rows = rowsOf("at: 20 min, set: {gauge.capacity: 60 Ah}");
        List<String> changes = rows.stream().filter(row -> row.contains(",settings,")).toList();
        assertEquals(1, changes.size(), changes::toString);
        assertTrue(changes.get(0).contains(",settings,capacity=60000,,"), changes.get(0));
        // Another capacity than the registers were written with is noticed in its row.
        rows.replaceAll(row -> row.replace("capacity=60000", "capacity=60001"));
        Files.write(out.resolve("vectors.csv"), rows);
        FakeTerminal check = new FakeTerminal();
        assertEquals(1, check.run("vectors", "--check", out.toString()), check.out());
        assertTrue(check.err().contains("SETTLED_NANOCOULOMBS is "), check.err());
        rows.replaceAll(row -> row.replace("capacity=60001", "size=60001"));
        Files.write(out.resolve("vectors.csv"), rows);
        FakeTerminal unknown = new FakeTerminal();
        assertEquals(1, unknown.run("vectors", "--check", out.toString()), unknown.out());
        assertTrue(unknown.err().contains("'size=60001' changes no setting"), unknown.err());
    }

    @Test
    void aChangeWithoutPowerStandsBehindThePowerUp() throws IOException {
        List<String> rows =
                rowsOf(
                        """
                        at: 10 min, set: {gauge.power: off}}
                          - {at: 12 min, set: {gauge.capacity: 60 Ah}}
                          - {at: 14 min, set: {gauge.power: on}\
                        """);
        List<String> ups = rows.stream().filter(row -> row.contains(",power-up,")).toList();
        assertEquals(2, ups.size(), ups::toString);
        assertTrue(ups.get(1).contains(",power-up,EXACT capacity=60000,240000,"), ups.get(1));
        assertTrue(rows.stream().noneMatch(row -> row.contains(",settings,")));
    }

    @Test
    void aFolderWithoutVectorsIsToldWhatIsMissing() throws IOException {
        Files.createDirectories(out);
        assertEquals(2, terminal.run("vectors", "--check", out.toString()));
        assertTrue(
                terminal.err()
                        .contains("holds no settings.csv; expected a folder that 'vectors --out'"),
                terminal.err());
    }

    @Test
    void shouldRefuseWhatItCannotDo() throws IOException {
        String[][] wrong = {
            {"vectors"},
            {"vectors", scenario.toString()},
            {"vectors", "--out", out.toString()},
            {"vectors", "--check", out.toString(), scenario.toString()},
            {"vectors", "--out", out.toString(), "--until", "2 d", scenario.toString()},
            {"vectors", "--out", scenario.toString(), scenario.toString()}
        };
        for (String[] args : wrong) {
            FakeTerminal each = new FakeTerminal();
            assertEquals(2, each.run(args), each.out());
            assertTrue(each.err().contains("expected") || each.err().contains("ends at"));
            assertFalse(Files.exists(out), each.err());
        }
        FakeTerminal missing = new FakeTerminal();
        assertEquals(2, missing.run("vectors", "--check", folder.resolve("no").toString()));
        assertTrue(missing.err().contains("there is no folder"), missing.err());
    }
}
