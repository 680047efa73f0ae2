package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The trace of a run: its rows, and that it appears whole or not at all. */
class TraceTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path hut;

    @BeforeEach
    void writeScenario() throws IOException {
        hut = Files.writeString(folder.resolve("hut.yaml"), Samples.hut());
    }

    private List<String> trace(String every) throws IOException {
        Path csv = folder.resolve("t.csv");
        String[] args = {"run", "--trace", csv.toString(), "--trace-every", every, hut.toString()};
        assertEquals(0, terminal.run(args), terminal.err());
        return Files.readAllLines(csv);
    }

    @Test
    void aRowStandsForEachMinuteAndBothEnds() throws IOException {
        List<String> rows = trace("1 min");
        assertEquals(1 + 1 + 24 * 60, rows.size());
        assertTrue(rows.get(0).startsWith("time_s,true_soc_percent,true_charge_Ah"), rows.get(0));
        assertTrue(rows.get(1).startsWith("0.000,60.0000,30.000000,"), rows.get(1));
        assertTrue(rows.get(rows.size() - 1).startsWith("86400.000,"), rows.get(rows.size() - 1));
        for (String column : List.of("lower_edge_percent", "time_to_full_kind", "trust_reason")) {
            assertTrue(rows.get(0).contains(",gauge_" + column + ","), column);
        }
        assertTrue(rows.get(0).endsWith(",gauge_faults"), rows.get(0));
        assertTrue(rows.get(1).endsWith(",DECLARED,DECLARED_ONLY,"), rows.get(1));
        int columns = rows.get(0).split(",", -1).length;
        assertTrue(rows.stream().allMatch(row -> row.split(",", -1).length == columns));
    }

    @Test
    void aRowCanStandForEachTick() throws IOException {
        assertEquals(1 + 1 + 86_400, trace("tick").size());
    }

    @Test
    void anIntervalThatDoesNotDivideTheRunStillEndsAtItsEnd() throws IOException {
        List<String> rows = trace("7 h");
        assertEquals(1 + 1 + 3 + 1, rows.size());
        assertTrue(rows.get(3).startsWith("50400.000,"), rows.get(3));
        assertTrue(rows.get(5).startsWith("86400.000,"), rows.get(5));
    }

    @Test
    void aGaugeWithoutPowerHasEmptyCells() throws IOException {
        Files.writeString(
                hut, Samples.hut() + "  - {from: 2 h, to: 3 h, set: {gauge.power: off}}\n");
        List<String> rows = trace("30 min");
        int columns = rows.get(0).split(",", -1).length;
        assertTrue(rows.stream().allMatch(row -> row.split(",", -1).length == columns));
        assertTrue(
                rows.get(1 + 5).matches("9000\\.000,[^,]+,[^,]+,[^,]+,[^,]+,[^,]+,+"), rows.get(6));
        assertTrue(rows.get(1 + 7).contains("NOTHING_KNOWN"), rows.get(8));
    }

    @Test
    void aTraceChangesNothingOfTheRun() throws IOException {
        trace("tick");
        FakeTerminal plain = new FakeTerminal();
        assertEquals(0, plain.run("run", hut.toString()));
        assertEquals(plain.out(), terminal.out());
    }

    @Test
    void shouldRefuseAnUnwritableTraceAndLeaveNothing() throws IOException {
        Path nowhere = folder.resolve("missing/t.csv");
        assertEquals(2, terminal.run("run", "--trace", nowhere.toString(), hut.toString()));
        assertEquals("", terminal.out());
        assertTrue(terminal.err().contains("there is no folder"), terminal.err());
        FakeTerminal second = new FakeTerminal();
        assertEquals(2, second.run("run", "--trace", folder.toString(), hut.toString()));
        assertTrue(second.err().contains("it is a folder"), second.err());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(hut), left.toList());
        }
    }

    @Test
    void shouldRefuseOneTraceForTwoScenarios() throws IOException {
        Path other = Files.writeString(folder.resolve("other.yaml"), Samples.hut());
        String csv = folder.resolve("t.csv").toString();
        assertEquals(2, terminal.run("run", "--trace", csv, hut.toString(), other.toString()));
        assertTrue(terminal.err().contains("one file cannot hold"), terminal.err());
    }
}
