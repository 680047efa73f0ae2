package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayCommandTest {
    private static final String HEAD = "t,i\n";

    @TempDir private Path folder;

    private static String resource(String name) {
        try {
            return Path.of(ReplayCommandTest.class.getResource("/logs/" + name).toURI()).toString();
        } catch (URISyntaxException e) {
            throw new AssertionError(e);
        }
    }

    private String log(String text) throws IOException {
        Path file = folder.resolve("log.csv");
        Files.writeString(file, text);
        return file.toString();
    }

    private static ReplayRun hut(String... more) {
        return ReplayRun.of(ReplayRun.args(resource("hut.csv"), "time_s", "current_A", more));
    }

    private ReplayRun run(String text, String... more) throws IOException {
        return ReplayRun.of(ReplayRun.args(log(text), "t", "i", more));
    }

    private static void assertRefused(ReplayRun run, String... parts) {
        assertEquals(2, run.exitCode, run.out + run.err);
        assertEquals("", run.out);
        for (String part : parts) {
            assertTrue(run.err.contains(part), part + " is not in: " + run.err);
        }
        assertFalse(run.err.contains("Exception"), run.err);
    }

    @Test
    void countsOneHourOutAndOneHourIn() {
        ReplayRun run = hut("--voltage", "voltage_V", "--counter", "count_Ah", "--json");
        assertEquals(0, run.exitCode, run.err);
        // 6 A for an hour out, 3 A for an hour in. Half a count of 0.0636 mA for 2 h is 0.00006 Ah.
        assertEquals(-3, run.number("countedAh"), 6.4e-5);
        assertEquals(-3, run.number("counterAh"), 1e-9);
        assertEquals(9, run.number("throughputAh"), 1e-9);
        assertEquals(-3, run.number("integralAh"), 1e-9);
        assertEquals(
                100 * (run.number("countedAh") + 3) / 9,
                run.number("differencePercentOfThroughput"),
                1e-6);
        assertEquals("agrees", run.text("answer"));
        assertEquals(7200, run.number("ticks"));
        assertTrue(run.text("digest").matches("[0-9a-f]{16}"), run.text("digest"));
        assertEquals(95, run.number("socPercent"), 0.01);
    }

    @Test
    void theVerdictStandsFirstAndFitsEightyColumns() {
        ReplayRun run = hut("--counter", "count_Ah");
        assertTrue(run.out.startsWith("Counted -3.0000"), run.out);
        assertTrue(
                run.out.lines().filter(l -> !l.startsWith("log")).allMatch(l -> l.length() <= 80));
        assertTrue(run.out.contains("hold          * next"), run.out);
        assertTrue(run.out.contains("tick          * 1 s"), run.out);
    }

    @Test
    void theSameReplayGivesTheSameDigestAndAnotherStartAnother() {
        assertEquals(hut("--json").text("digest"), hut("--json").text("digest"));
        ReplayRun other = hut("--json", "--start", "99.9 %");
        assertFalse(hut("--json").text("digest").equals(other.text("digest")));
    }

    @Test
    void holdsMeanWhatTheySay() throws IOException {
        String text = HEAD + "0,0\n3600,10\n7200,4\n";
        String[] long1 = {"--json", "--gap", "2 h", "--hold"};
        assertEquals(14, counted(text, long1, "next"), 1e-3);
        assertEquals(10, counted(text, long1, "previous"), 1e-3);
        assertEquals(12, counted(text, long1, "linear"), 1e-3);
    }

    private double counted(String text, String[] args, String last) throws IOException {
        String[] all = Stream.concat(Stream.of(args), Stream.of(last)).toArray(String[]::new);
        ReplayRun run = run(text, all);
        assertEquals(0, run.exitCode, run.err);
        return run.number("countedAh");
    }

    @Test
    void theLengthOfATickDoesNotChangeTheCount() throws IOException {
        // 7 A is not a whole number of counts; the row times are on no grid.
        String text = HEAD + "0.5,0\n7.25,7\n100.0001,7\n200,7\n";
        for (String tick : List.of("1 ms", "0.3 s", "1 s", "7 s", "60 s")) {
            double expected = 7 * 199.5 / 3600;
            assertEquals(expected, counted(text, new String[] {"--json", "--tick"}, tick), 2e-6);
        }
    }

    @Test
    void positiveDischargeTurnsCurrentAndCounter() {
        ReplayRun run = hut("--counter", "count_Ah", "--json", "--positive", "discharge");
        assertEquals(3, run.number("countedAh"), 6.4e-5);
        assertEquals(3, run.number("counterAh"), 1e-9);
    }

    @Test
    void shouldRefuseASignThatContradictsTheVoltage() {
        assertRefused(
                hut("--voltage", "voltage_V", "--positive", "discharge"),
                "contradicts the voltage",
                "--positive charge");
    }

    @Test
    void saysThatASteadyVoltageDoesNotTellTheSign() throws IOException {
        String text = "t,i,v\n0,0,12.6\n60,5,12.6\n120,-5,12.6\n";
        assertEquals("cannot-tell", run(text, "--voltage", "v", "--json").text("answer"));
    }

    @Test
    void recognisesMarkSemicolonsCommasUnitsMilliampsAndTheClockChange() {
        ReplayRun run =
                ReplayRun.of(
                        ReplayRun.args(
                                resource("autumn-night.csv"),
                                "when",
                                "current",
                                "--zone",
                                "Europe/Amsterdam",
                                "--current-unit",
                                "mA",
                                "--json"));
        assertEquals(0, run.exitCode, run.err);
        // 02:57 summer time to 02:03:00.5 winter time: 6 min 0.5 s at 1.5 A.
        assertEquals(360.5, run.number("seconds"), 1e-9);
        assertEquals(1.5 * 360.5 / 3600, run.number("countedAh"), 4e-6);
        for (String note :
                List.of(
                        "byte-order mark",
                        "semicolons",
                        "decimal commas",
                        "row 2 is a row of units: local, mA",
                        "clock change between rows 5 and 6: offset +02:00 to +01:00",
                        "happens twice")) {
            assertTrue(run.out.contains(note), note + " is not in " + run.out);
        }
    }

    @Test
    void shouldRefuseMilliampsThatNobodyAskedFor() {
        assertRefused(
                ReplayRun.of(
                        ReplayRun.args(
                                resource("autumn-night.csv"),
                                "when",
                                "current",
                                "--zone",
                                "Europe/Amsterdam")),
                "autumn-night.csv:2: ",
                "--current-unit mA");
    }

    @Test
    void dateTimesWithOffsetsNeedNoZoneAndNameTheirChange() throws IOException {
        ReplayRun run =
                run(
                        HEAD + "2026-03-29T01:59:00+01:00,0\r\n2026-03-29T03:00:00+02:00,3\r\n",
                        "--json");
        assertEquals(60, run.number("seconds"), 1e-9);
        assertTrue(run.out.contains("clock change between rows 2 and 3"), run.out);
    }

    @Test
    void shouldRefuseALocalTimeThatDoesNotExist() throws IOException {
        assertRefused(
                run(
                        HEAD + "2026-03-29T01:59,0\n2026-03-29T02:30,0\n",
                        "--zone",
                        "Europe/Amsterdam"),
                "log.csv:3:1: time: 2026-03-29T02:30 does not exist in Europe/Amsterdam");
    }

    @Test
    void shouldRefuseADateTimeWithoutOffsetOrZone() throws IOException {
        assertRefused(run(HEAD + "2026-03-29T01:59,0\n2026-03-29T02:30,0\n"), "--zone");
    }

    @Test
    void shouldRefuseTimeThatRunsBackwards() throws IOException {
        assertRefused(
                run(HEAD + "0,1\n10,1\n9.5,1\n20,1\n"), "log.csv:4:1: ", "backwards by 0.5 s");
    }

    @Test
    void acceptsRepeatedTimesAndSaysSo() throws IOException {
        ReplayRun run = run(HEAD + "0,1\n10,1\n10,5\n20,5\n", "--json", "--hold", "linear");
        assertEquals(60.0 / 3600, run.number("integralAh"), 1e-9);
        assertTrue(run.out.contains("1 row repeats the time of the row before (first: row 4)"));
    }

    @Test
    void shouldRefuseMissingAndNonNumericCellsAllAtOnce() throws IOException {
        assertRefused(
                run(HEAD + "0,1\n1,\n2\n3,x\nNaN,1\n4,Infinity\n5,0x10\n6,1e999\n"),
                "log.csv:3:3: current: the cell is empty",
                "log.csv:4:3: current: the cell is empty",
                "log.csv:5:3: current: 'x' is not a number",
                "log.csv:6:1: time: 'NaN'",
                "log.csv:7:3: current: 'Infinity'",
                "log.csv:8:3: current: '0x10'",
                "log.csv:9:3: current: '1e999' is beyond");
    }

    @Test
    void shouldRefuseAMixOfPointsAndCommas() throws IOException {
        assertRefused(
                run("t;i\n0;1,5\n1;1.5\n"), "log.csv:3:3: ", "decimal point", "decimal comma");
        assertRefused(run(HEAD + "0,\"1,000.5\"\n1,2\n"), "log.csv:2:3: ");
    }

    @Test
    void shouldRefuseColumnsThatAreNotThereAndNameTheNearest() throws IOException {
        assertRefused(
                ReplayRun.of(ReplayRun.args(log("time_s,current_A\n0,1\n"), "time", "Current_A")),
                "log.csv:1: --time: no column 'time'",
                "'time_s', 'current_A'",
                "did you mean 'time_s'?",
                "--current: no column 'Current_A'",
                "did you mean 'current_A'?");
        assertRefused(run("0,1\n1,1\n"), "the first row must name the columns");
        assertRefused(run("t,i,i\n0,1,1\n"), "'i' is there twice");
    }

    @Test
    void shouldRefuseLogsWithoutAnInterval() throws IOException {
        assertRefused(run(""), "the file is empty");
        assertRefused(run(" \n\n"), "the file is empty");
        assertRefused(run(HEAD), "no row");
        assertRefused(run(HEAD + "0,1\n"), "one row");
        assertRefused(
                ReplayRun.of(ReplayRun.args(folder.resolve("none.csv").toString(), "t", "i")),
                "none.csv: does not exist");
        assertRefused(ReplayRun.of(ReplayRun.args(folder.toString(), "t", "i")), "is not a file");
        assertRefused(run(HEAD + "0,\"1\n1,2\n"), "log.csv");
    }

    @Test
    void shouldRefuseAGapUnderCurrentAndAcceptOneAtRest() throws IOException {
        assertRefused(run(HEAD + "0,1\n60,1\n4000,0\n"), "log.csv:4: gap of 1 h 5 min", "0.0200 A");
        assertRefused(
                run("t,i,c\n0,0,0\n4000,0,0.5\n", "--counter", "c"), "counter moved by 0.50000");
        ReplayRun rest = run("t,i,c\n0,0,0\n4000,0,0\n4060,3,0.05\n", "--counter", "c", "--json");
        assertEquals(0.05, rest.number("countedAh"), 1e-5);
        assertTrue(rest.out.contains("the counter stood still"), rest.out);
        assertEquals(0, run(HEAD + "0,1\n4000,1\n", "--gap", "2 h").exitCode);
    }

    @Test
    void saysFirstThatTheConverterClipped() throws IOException {
        ReplayRun run = run(HEAD + "0,0\n10,40\n");
        assertEquals(0, run.exitCode);
        assertTrue(run.out.startsWith("Not all was counted: in 10 of 10 ticks"), run.out);
    }

    @Test
    void shouldRefuseWrongQuantities() {
        assertRefused(
                hut("--start", "120 %", "--tick", "2 min", "--gap", "15", "--zone", "Pier/Hut"),
                "--start: expected 0 % to 100 %",
                "--tick: expected 1 ms to 60 s",
                "--gap: expected a time",
                "--zone: expected a time zone");
        List<String> args = ReplayRun.args(resource("hut.csv"), "time_s", "current_A");
        args.set(args.indexOf("20 bit, 100 mV"), "20 bit, 50 mV");
        assertRefused(ReplayRun.of(args), "--shunt: shunt-rated-drop: must be at most");
        args.set(args.indexOf("20 bit, 50 mV"), "20 bit");
        args.set(args.indexOf("20 A / 60 mV"), "20 A");
        assertRefused(
                ReplayRun.of(args), "--adc: expected a converter", "--shunt: expected a shunt");
    }

    @Test
    void writesTheTraceBesideAndMovesIt() throws IOException {
        Path trace = folder.resolve("trace.csv");
        Files.writeString(trace, "old");
        ReplayRun run = run(HEAD + "0,0\n10,6\n", "--trace", trace.toString());
        assertEquals(0, run.exitCode, run.err);
        List<String> lines = Files.readAllLines(trace, StandardCharsets.UTF_8);
        assertEquals(12, lines.size());
        assertTrue(lines.get(11).startsWith("10.000,94372,"), lines.get(11));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(2, files.count(), "only the log and the trace remain");
        }
    }

    @Test
    void shouldWriteNothingWhenTheLogIsRefused() throws IOException {
        Path trace = folder.resolve("trace.csv");
        assertRefused(run(HEAD + "0,x\n", "--trace", trace.toString()), "log.csv:2:3");
        assertFalse(Files.exists(trace));
        assertRefused(
                run(HEAD + "0,1\n1,1\n", "--trace", folder.resolve("no/t.csv").toString()),
                "cannot be written");
    }
}
