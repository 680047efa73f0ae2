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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * {@code audit --log} over the trace of a week of the shelf: the hut of 60 Ah, whose shore charger
 * fills it once, to 14.57 V at 18 °C, from the third evening on until the current is small.
 */
class LogAuditCommandTest {
    @TempDir private static Path folder;

    private static Path week = Path.of("");

    @BeforeAll
    static void writeTheLog() {
        week = folder.resolve("week.csv");
        Path scenario =
                FakeTerminal.scenarios().resolve("first-steps").resolve("a-week-in-the-hut.yaml");
        FakeTerminal terminal = new FakeTerminal();
        int code =
                terminal.run(
                        "run",
                        scenario.toString(),
                        "--trace",
                        week.toString(),
                        "--trace-every",
                        "1 min");
        assertEquals(ExitCodes.OK, code, terminal.err());
    }

    /** Options that stand apart by two spaces; one that is there already gets another value. */
    private static FakeTerminal audit(int expected, Path log, String more) {
        FakeTerminal terminal = new FakeTerminal();
        List<String> all = new ArrayList<>(List.of("audit", "--log", log.toString()));
        all.addAll(List.of("--log-time", "time_s", "--log-current", "true_current_A"));
        all.addAll(List.of("--log-voltage", "true_voltage_V"));
        all.addAll(List.of("--log-temperature", "temperature_C", "--log-positive", "charge"));
        all.addAll(List.of("--voltage", "12 V", "--chemistry", "lead-acid-agm"));
        all.addAll(List.of("--capacity", "60 Ah", "--shunt", "50 A / 75 mV"));
        List<String> told = Stream.of(more.split(" {2}")).filter(it -> !it.equals("-")).toList();
        for (int i = 0; i < told.size(); i++) {
            int place = all.indexOf(told.get(i));
            if (place >= 0) {
                all.set(place + 1, told.get(++i));
            } else {
                all.add(told.get(i));
            }
        }
        int code = terminal.run(all.toArray(new String[0]));
        assertEquals(expected, code, terminal.err() + terminal.out());
        return terminal;
    }

    @ParameterizedTest
    @CsvSource({
        "--full-volts  14.8 V, threshold-above-charger, full-volts: 14.2 V, shown",
        "--full-amps  0.2 %, taper-below-end, full-amps: 2 %, shown",
        "--full-amps  15 %, taper-wide, full-amps: 2 %, shown",
        "--full-minutes  590 min, hold-long, full-minutes: 1 h, shown",
        "--full-minutes  2 min, hold-short, full-minutes: 1 h, any",
        "--full-volts  0 V, full-rule-off, full-volts: 14.2 V, shown",
        "--typed-capacity  30 Ah, capacity-usable, typed-capacity: 60 Ah, shown",
        "--typed-shunt  100 A / 75 mV, shunt, typed-shunt: 50 A / 75 mV, shown",
        "--efficiency-set  75 %, efficiency, efficiency-set: 92 %, shown",
        "--sets-full  volts  --full-volts  13.3 V, threshold-at-float, full-volts: 14.3 V, any",
        "--sets-full  volts-and-current  --full-volts  14.7 V, threshold-above-charger,"
                + " full-volts: 14.3 V, shown",
    })
    void oneWrongSettingIsFoundAlone(String options, String key, String remedy, String how)
            throws IOException {
        JsonNode json =
                new ObjectMapper()
                        .readTree(audit(ExitCodes.FAILED, week, options + "  --json").out());
        assertEquals(1, json.get("findings").size(), json.toString());
        JsonNode found = json.get("findings").get(0);
        assertEquals(key, found.get("key").asText(), json.toString());
        assertTrue(found.get("remedy").toString().contains(remedy), json.toString());
        if (how.equals("shown")) {
            assertEquals("shown by the run", found.get("confidence").asText(), json.toString());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "-",
        "--typed-capacity  62 Ah  --full-volts  14.3 V",
        "--full-amps  3 %  --full-minutes  30 min",
        "--sets-full  volts-and-current  --full-volts  14.2 V  --full-amps  2 %",
    })
    void rightSettingsRaiseNothing(String options) {
        String out = audit(ExitCodes.OK, week, options).out();
        assertTrue(out.startsWith("Nothing found"), out);
        assertTrue(out.lines().allMatch(line -> line.length() <= 80), out);
    }

    /** The trace knows that it is full once; the log says so without the truth. */
    /** No setting is wrong; that the figure is cannot be said below a "nothing found". */
    @ParameterizedTest
    @CsvSource({
        "--sets-full  volts, it looks at the volts alone",
        "--sets-full  by-hand  --own-current  20 mA, that it draws itself",
        "--sets-full  never, nothing sets it to 100 %",
    })
    void whatAGaugeDoesItselfStandsInTheFirstLine(String options, String told) {
        String out = audit(ExitCodes.OK, week, options).out();
        assertTrue(out.startsWith("No setting is wrong, but what the gauge itself does"), out);
        assertTrue(out.replaceAll("\\s+", " ").contains(told), out);
    }

    @Test
    void theSignsOfAFullChargeAreThoseOfTheTruth() throws IOException {
        String out = audit(ExitCodes.OK, week, "-").out();
        assertTrue(out.contains("14.57 V at the highest"), out);
        assertTrue(out.contains("signs of a full charge once"), out);
        assertTrue(out.contains("a log has no truth"), out);
        double net = 0;
        for (String row : Files.readAllLines(week).subList(1, 10_082 - 1)) {
            String[] cells = row.split(",", -1);
            net += Double.parseDouble(cells[3]) / 60;
        }
        assertTrue(out.contains("%+.1f Ah in all".formatted(net)), net + out);
    }

    /** A weak log: up to noon of the second day, nothing but sun. */
    @Test
    void aLogWithoutAFullChargeSaysSoAndBlamesNothing() throws IOException {
        Path sun = folder.resolve("sun.csv");
        Files.write(sun, Files.readAllLines(week).subList(0, 36 * 60));
        String out = audit(ExitCodes.OK, sun, "--full-volts  14.6 V").out();
        assertTrue(out.contains("no sign of a full charge"), out);
        assertTrue(out.contains("whether the gauge misses a full charge"), out);
    }

    /** Whatever flows is what the sign says: turned and said so, it is the same log. */
    @Test
    void aLogThatIsTurnedGivesTheSameAnswer() throws IOException {
        Path turned = folder.resolve("turned.csv");
        List<String> rows = new ArrayList<>();
        for (String row : Files.readAllLines(week)) {
            String[] cells = row.split(",", -1);
            boolean isHeader = cells[0].equals("time_s");
            cells[3] = isHeader ? cells[3] : String.valueOf(-Double.parseDouble(cells[3]));
            rows.add(String.join(",", cells));
        }
        Files.write(turned, rows);
        String same = audit(ExitCodes.OK, turned, "--log-positive  discharge").out();
        String plain = audit(ExitCodes.OK, week, "-").out();
        assertEquals(plain.replace(week.toString(), ""), same.replace(turned.toString(), ""), same);
        FakeTerminal wrong = audit(ExitCodes.WRONG_INPUT, turned, "-");
        assertTrue(wrong.err().contains("say --log-positive discharge"), wrong.err());
        assertEquals("", wrong.out());
    }

    @Test
    void whatIsNoLogIsRefusedWithNothingWritten() throws IOException {
        Path empty = Files.writeString(folder.resolve("empty.csv"), "");
        List<String> rows = Files.readAllLines(week);
        Path hours = Files.write(folder.resolve("hours.csv"), rows.subList(0, 600));
        List<String> holed = new ArrayList<>(rows.subList(0, 3_000));
        holed.addAll(rows.subList(3_600, 6_000));
        Path gap = Files.write(folder.resolve("gap.csv"), holed);
        List<String> odd = new ArrayList<>(rows);
        odd.set(5, odd.get(5).replaceFirst("^[^,]*,", "noon,"));
        Path word = Files.write(folder.resolve("word.csv"), odd);
        refused(empty, "-", "the file is empty; expected a header row");
        refused(hours, "-", "the log is 10.0 h long; expected a day at least");
        refused(gap, "-", "give a longer --log-gap, such as --log-gap \"2 h\"");
        refused(word, "-", "word.csv:6:1: time: ");
        refused(folder.resolve("none.csv"), "-", "does not exist");
        refused(week, "--log-voltage  volts", "--log-voltage");
        refused(week, "--log-gap  soon", "--log-gap: ");
        refused(week, "--log-zone  Pier", "--log-zone: expected a time zone");
        refused(week, "--shunt  5 A / 75 mV", "more than a gauge sees on the shunt");
        refused(week, "--scenario", "adopt");
        refused(week, "other.yaml", "either a scenario FILE or a log of your own");
    }

    private static void refused(Path log, String more, String message) {
        FakeTerminal terminal = audit(ExitCodes.WRONG_INPUT, log, more);
        assertEquals("", terminal.out());
        assertTrue(terminal.err().contains(message), message + " in " + terminal.err());
        assertFalse(terminal.err().contains("Exception"), terminal.err());
    }

    @Test
    void whatIsMissingIsToldAtOnce() {
        FakeTerminal terminal = new FakeTerminal();
        String[] bare = {
            "audit",
            "--log",
            "week.csv",
            "--voltage",
            "12 V",
            "--chemistry",
            "agm",
            "--capacity",
            "60 Ah"
        };
        bare[6] = "lead-acid-agm";
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(bare));
        for (String each : List.of("--log-time", "--log-current", "--log-voltage")) {
            assertTrue(terminal.err().contains(each + " is missing"), terminal.err());
        }
        assertTrue(terminal.err().contains("--log-positive is missing"), terminal.err());
        terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("audit", "--log-time", "time_s"));
        assertTrue(terminal.err().contains("--log is missing"), terminal.err());
    }

    /** The guide's example is what is printed. */
    @Test
    void theGuideShowsWhatIsPrinted() throws IOException {
        Path guide = FakeTerminal.scenarios().resolveSibling("gauge-sim/docs/user-guide.md");
        String out = audit(ExitCodes.FAILED, week, "--full-volts  14.8 V").out();
        String shown = out.replace(week.toString(), "week.csv");
        String findings = shown.substring(0, shown.indexOf("\nWhat was assumed"));
        assertTrue(Files.readString(guide).contains(findings), findings);
    }
}
