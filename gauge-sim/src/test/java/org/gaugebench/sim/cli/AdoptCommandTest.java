package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.logs.TimeProfile;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A log of the field becomes a scenario. The log is invented: see {@link HutLog}. */
class AdoptCommandTest {
    @TempDir private Path folder;
    private AdoptBench bench;

    @BeforeEach
    void write() throws IOException {
        bench = new AdoptBench(folder);
    }

    @Test
    void aComplaintBecomesAScenarioThatRunsGreenAndRepeats() throws IOException {
        FakeTerminal adopted = bench.adopt(0, "--voltage", "voltage_V", "--shown", "shown_percent");
        assertEquals(List.of("hut-complaint.csv", "hut-complaint.yaml"), bench.left());
        String told = adopted.out();
        assertTrue(told.contains("log      2682 rows, 2 d; gaps: 2, restarts: 1\n"), told);
        assertTrue(told.contains("claims   5 of 5 hold"), told);
        FakeTerminal run = new FakeTerminal();
        assertEquals(0, run.run("run", bench.scenario().toString()), run.out());
        assertTrue(run.out().startsWith("PASSED: 5 of 5 expectations hold"), run.out());
        assertEquals(AdoptBench.digest(told), AdoptBench.digest(run.out()));
        String text = Files.readString(bench.scenario());
        assertTrue(text.startsWith("# Made by gauge-sim adopt from Hut complaint.csv: 2682"), text);
        assertTrue(text.contains("# A log is a measurement, not the truth"), text);
        assertTrue(text.contains("{from: 1 d 2 h, to: 1 d 5 h, set: {sensor.samples: missing}}"));
        assertTrue(text.contains("{at: 1 d 20 h, set: {gauge.power: off}}"), text);
        assertTrue(text.contains("{at: 1 d 20 h 20 min, set: {gauge.power: on}}"), text);
        assertTrue(text.contains("within: band, of: truth"), text);
        assertTrue(text.contains("#   2 d: 100 %"), text);
        assertFalse(text.contains("of: 70 %"), "what the unit showed is no claim");
    }

    @Test
    void theCommandsThatTakeScenariosTakeIt() throws IOException {
        bench.adopt(0, "--voltage", "voltage_V");
        FakeTerminal resolved = new FakeTerminal();
        assertEquals(0, resolved.run("check", "--resolved", bench.scenario().toString()));
        Path again = Files.writeString(bench.out.resolve("again.yaml"), resolved.out());
        FakeTerminal compared = new FakeTerminal();
        assertEquals(
                0,
                compared.run("compare", bench.scenario().toString(), again.toString()),
                compared.out() + compared.err());
        FakeTerminal vectors = new FakeTerminal();
        assertEquals(
                0,
                vectors.run(
                        "vectors",
                        "--until",
                        "30 min",
                        "--out",
                        folder.resolve("vectors").toString(),
                        bench.scenario().toString()),
                vectors.err());
        Path table = bench.out.resolve("hut-complaint.csv");
        Files.writeString(table, Files.readString(table).replace("\n60,", "\n61,"));
        FakeTerminal edited = new FakeTerminal();
        assertEquals(2, edited.run("check", again.toString()));
        assertTrue(edited.err().contains("are not those the scenario was written for"));
    }

    /**
     * Row by row: the current of the minute that ends at the next row, in the log's own figures.
     */
    @Test
    void theTableHoldsTheLogsCurrent() throws Exception {
        bench.adopt(0, "--gap", "4 h");
        ProfileSpec profile =
                ScenarioReader.read(bench.scenario()).loads().get(0).traits().profile();
        assertTrue(profile != null);
        TimeProfile values = profile.values();
        for (int minute = 0; minute < 26 * 60; minute++) {
            int row = values.rowAt(minute * 60_000L);
            assertEquals(-HutLog.microamps(minute + 1), values.micros(row), "minute " + minute);
        }
    }

    @Test
    void aSignTurnedRoundIsTheSameLog() throws IOException {
        bench.adopt(0, "--voltage", "voltage_V");
        String first = Files.readString(bench.out.resolve("hut-complaint.csv"));
        bench.writeLog(HutLog.csv(-1));
        bench.adopt(0, "--positive", "discharge", "--voltage", "voltage_V", "--force", "on");
        assertEquals(first, Files.readString(bench.out.resolve("hut-complaint.csv")));
        FakeTerminal wrong = bench.adopt(2, "--voltage", "voltage_V", "--force", "on");
        assertTrue(wrong.err().contains("say --positive discharge"), wrong.err());
        assertTrue(bench.adopt(2, "--positive", "").err().contains("--positive"));
    }

    @ParameterizedTest
    @CsvSource({"next, 1 s", "previous, 7 s", "linear, 1 s", "linear, 13 s", "next, 60 s"})
    void theTruthOfTheScenarioIsWhatTheLogCountsTo(String hold, String tick) throws IOException {
        bench.adopt(0, "--hold", hold, "--tick", tick);
        assertTrue(Files.readString(bench.scenario()).contains("reading: true-state-of-charge"));
    }

    @Test
    void countsAreAmpsOnceTheShuntIsKnown() throws IOException {
        bench.adopt(0, "--gap-current", "zero");
        String amps = Files.readString(bench.out.resolve("hut-complaint.csv"));
        // 50 A / 75 mV and 20 bit over 100 mV: 100 mV / 2^19 a count are 127.156576... uA.
        double perCount = 0.1 / (1 << 19) * 50 / 0.075;
        StringBuilder counts = new StringBuilder("time_s,codes,uptime_s\n");
        for (String line : HutLog.csv(1).lines().skip(1).toList()) {
            String[] cells = line.split(",", -1);
            counts.append(
                    String.format(
                            Locale.ROOT,
                            "%s,%.4f,%s\n",
                            cells[0],
                            Double.parseDouble(cells[1]) / perCount,
                            cells[5]));
        }
        bench.writeLog(counts.toString());
        FakeTerminal missing =
                bench.adopt(2, "--current", "codes", "--current-unit", "counts", "--force", "on");
        assertTrue(missing.err().contains("--adc is missing"), missing.err());
        bench.adopt(
                0,
                "--current",
                "codes",
                "--current-unit",
                "counts",
                "--adc",
                "20 bit, 100 mV",
                "--gap-current",
                "zero",
                "--force",
                "on");
        List<String> before = amps.lines().toList();
        List<String> after =
                Files.readString(bench.out.resolve("hut-complaint.csv")).lines().toList();
        assertEquals(before.size(), after.size());
        for (int i = 1; i < before.size(); i++) {
            double expected = AdoptBench.second(before.get(i));
            // Four decimals of a count are 0.006 uA; the table holds whole microamps.
            assertEquals(expected, AdoptBench.second(after.get(i)), 1.1e-6);
        }
    }

    @Test
    void whatTheLogDoesNotSayIsAskedForAllAtOnce() throws IOException {
        FakeTerminal asked =
                bench.adopt(2, "--chemistry", "", "--capacity", "", "--start", "", "--shunt", "");
        for (String line :
                List.of(
                        "--chemistry is missing: what battery it is, which the log does not say;"
                                + " expected for instance --chemistry lead-acid-agm",
                        "--capacity is missing",
                        "--start is missing: the true state of charge at the first row",
                        "--shunt is missing: the unit's shunt")) {
            assertTrue(asked.err().contains(line), asked.err());
        }
        assertEquals(List.of(), bench.left());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--chemistry | lead | expected one of lead-acid-flooded, lead-acid-agm",
                "--capacity  | 60 A | --capacity: expected",
                "--capacity  | 20000 Ah | expected 0.1 Ah to 10000 Ah",
                "--start     | 101 % | --start: expected 0 % to 100 %",
                "--start     | 3 %  | the log draws more than the battery holds: from 1.80 Ah",
                "--nominal-voltage | 13 V | expected 12 V, 24 V, 36 V or 48 V",
                "--tick      | 2 min | --tick: expected 1 ms to 60 s",
                "--gap       | 0 s  | --gap: expected a time",
                "--claim-shown | 5 % | --claim-shown: needs --shown COLUMN",
                "--name      | ../x | --name: expected lower-case letters",
                "--voltage   | time_s | voltage: expected 0 to 100 V, but found 120.0",
                "--temperature | time_s | temperature: expected -40 to 80 °C, but found 120.0",
                "--uptime    | uptime | no column 'uptime'; the columns are",
                "--gap-current | after | expected zero or before, but found 'after'",
                "--current-unit | kA | expected A, mA or counts, but found 'kA'",
                "--absorption | 300 mV | --absorption: expected a voltage such as",
                "--shunt     | 50 A / 75 V | the gauge's 'shunt-rated-drop' must be 10 mV to 300"
                        + " mV",
                "--capacity  | 60.0001 Ah | the gauge's 'capacity'",
            })
    void whatCannotBeIsRefusedInWords(String option, String value, String expected)
            throws IOException {
        String err = bench.adopt(2, option, value).err();
        assertTrue(err.contains(expected), err);
        assertEquals(List.of(), bench.left());
    }

    @Test
    void nothingIsOverwrittenUnlessAskedFor() throws IOException {
        Files.createDirectories(bench.out);
        Path table = Files.writeString(bench.out.resolve("hut-complaint.csv"), "mine");
        FakeTerminal refused = bench.adopt(2);
        assertTrue(refused.err().contains("hut-complaint.csv is there already"), refused.err());
        assertEquals("mine", Files.readString(table));
        assertEquals(List.of("hut-complaint.csv"), bench.left());
        bench.adopt(0, "--name", "other");
        assertEquals(List.of("hut-complaint.csv", "other.csv", "other.yaml"), bench.left());
        bench.adopt(0, "--force", "on");
        assertTrue(Files.readString(table).startsWith("time_s,current_A\n"));
        bench.log = Files.move(bench.log, bench.out.resolve("own.csv"));
        FakeTerminal itself = bench.adopt(2, "--force", "on");
        assertTrue(itself.err().contains("own.csv is the log itself"), itself.err());
        assertEquals(HutLog.csv(1), Files.readString(bench.log));
    }

    /** The unit showed 100 % after its restart, and the core does not. */
    @Test
    void whatTheUnitShowedCanBeClaimed() throws IOException {
        FakeTerminal claimed = bench.adopt(1, "--shown", "shown_percent", "--claim-shown", "12 %");
        assertTrue(claimed.out().contains("failed  state-of-charge at 2 d: within 12 % of 100 %"));
        assertTrue(claimed.out().contains("--efficiency is: the log's count"), claimed.out());
        String text = Files.readString(bench.scenario());
        assertEquals(48, text.lines().filter(line -> line.contains("because: \"shown\"")).count());
        assertFalse(text.contains("of: 0 %"), "an empty cell claims nothing");
        FakeTerminal run = new FakeTerminal();
        assertEquals(1, run.run("run", bench.scenario().toString()));
    }

    @Test
    void aPlaceThatCannotBeWrittenLeavesNothing() throws IOException {
        bench.out = Files.writeString(folder.resolve("a-file"), "");
        assertTrue(bench.adopt(2).err().contains("--out: cannot write to"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "60,NaN,12,0,,60",
                "60,,12,0,,60",
                "60;1;12;0;;60",
                "60,1,12,0,,",
                "60,1,12,0,x,60",
                "-1,1,12,0,,60",
                "60,1,12",
                "60,2001,12,0,70,60",
                "60,1,12,0,70,-1"
            })
    void aBrokenLogIsToldWithItsRow(String row) throws IOException {
        bench.writeLog(
                "time_s,current_A,voltage_V,count_Ah,shown_percent,uptime_s\n0,1,12,0,,0\n"
                        + row
                        + "\n120,1,12,0,,120\n");
        String err = bench.adopt(2, "--shown", "shown_percent").err();
        assertTrue(err.startsWith(bench.log + ":3:"), err);
        assertEquals(List.of(), bench.left());
    }
}
