package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every kind of wrong file: where it is wrong, and what its author reads. */
class ScenarioProblemTest {
    @Test
    void aBandAndAFaultAreRefusedWhereTheyHaveNoMeaning() {
        String start = Samples.SMALLEST + "expect:\n  - {";
        String current =
                Samples.problemsOf(start + "at: 1 h, reading: current, within: band, of: truth}\n");
        assertTrue(current.contains("only 'state-of-charge' has a band"), current);
        String value =
                Samples.problemsOf(
                        start + "at: 1 h, reading: state-of-charge, within: band, of: 3 %}\n");
        assertTrue(value.contains("'within: band' goes with 'of: truth'"), value);
        String edge =
                Samples.problemsOf(
                        start + "at: 1 h, reading: lower-edge, within: 1 %, of: truth}\n");
        assertTrue(edge.contains("'lower-edge' cannot be compared with the truth"), edge);
        String fault =
                Samples.problemsOf(start + "event: declared, fault: full-overdue, times: 1}\n");
        assertTrue(fault.contains("'fault' goes with 'event: fault-raised' only"), fault);
        String name =
                Samples.problemsOf(start + "event: fault-raised, fault: full-overdu, times: 1}\n");
        assertTrue(name.contains("full-overdue"), name);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "memory: {slots: 1}|expected a whole number from 2 to 256 such as 8",
                "memory: {slot-bytes: 64}|'slots' is missing in memory; expected 'slots: 8'",
                "memory: {slots: 2, endurance: 0}|expected a whole number from 1",
                "memory: {slots: 2, faults: [{kind: rot, slot: 0}]}|'kind' cannot be 'rot';"
                        + " expected one of: program-error",
                "memory: {slots: 2, faults: [{kind: read-error}]}|'slot' is missing",
                "memory: {slots: 2, faults: [{kind: read-error, slot: 2}]}|from 0 to 1",
                "memory: {slots: 2, faults: [{kind: bit-rot, slot: 0}]}|'byte' is missing",
                "memory: {slots: 2, faults: [{kind: bit-rot, slot: 0, byte: 256}]}|0 to 255",
                "memory: {slots: 2, faults: [{kind: bit-rot, slot: 0, byte: 1, to: 1 h}]}|no key"
                        + " 'to'",
                "memory: {slots: 2, faults: [{kind: read-error, slot: 0, from: 2 h, to: 1"
                        + " h}]}|later",
                "off-time: perhaps|'off-time' cannot be 'perhaps'",
                "off-time-limit: 0 s|'off-time-limit' must be 1 ms to 3650 d",
                "cut-leaves: ashes|'cut-leaves' cannot be 'ashes'",
                "cut-for: 4000 d|'cut-for' must be 0 s to 3650 d"
            })
    void aMemoryThatCannotBeIsRefusedWithAnExample(String gauge, String expected) {
        String problems = Samples.problemsOf(Samples.SMALLEST + "gauge: {" + gauge + "}\n");
        assertTrue(problems.contains(expected), problems);
        assertTrue(problems.startsWith("hut.yaml:6:"), problems);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "at: 1 h, set: {gauge.cut-at-write: 1}|a gauge without memory never writes",
                "from: 1 h, to: 2 h, set: {gauge.cut-at-write: 1}|power goes once",
                "at: 1 h, set: {gauge.power: away}|'gauge.power' cannot be 'away'",
                "at: 1 h, set: {gauge.off-time: so}|'gauge.off-time' cannot be 'so'"
            })
    void aCutThatCannotBeIsRefused(String step, String expected) {
        String problems = Samples.problemsOf(Samples.SMALLEST + "timeline: [{" + step + "}]\n");
        assertTrue(problems.contains(expected), problems);
    }

    @Test
    void shouldShowTheLineAndACaretUnderTheValue() {
        assertEquals(
                """
                hut.yaml:4:47: expected a charge such as 60 Ah, but found '60 A', which is a current
                    battery: {chemistry: lead-acid-agm, capacity: 60 A}
                                                                  ^
                """,
                Samples.problemsOf(Samples.SMALLEST.replace("60 Ah", "60 A")));
    }

    @Test
    void shouldReportAllProblemsOfAFileAtOnceInFileOrder() {
        String text =
                """
                format: 2
                title: Wrong
                duration: 7
                tick: 1 s
                battery: {chemistry: lead, capcity: 60 Ah}
                sensor: {shunt: 75 mV}
                gauge: {absorbtion: 14.4 V, hold: 90 s}
                loads: {lamp: {current: 1 A, power: 3 W}}
                timeline: [{at: 2 h, set: {lmap: on}}]
                expect: [{at: 1 d, reading: charge, within: 2 %, of: truth}]
                """;
        String[] starts = {
            "hut.yaml:1:9: this program reads format 1",
            "hut.yaml:3:11: expected a time such as 2 h 30 min, but found '7' without a unit",
            "hut.yaml:5:10: 'capacity' is missing in battery; expected 'capacity: 60 Ah @ 20 h'",
            "hut.yaml:5:22: 'chemistry' cannot be 'lead'; expected one of: lead-acid-flooded,",
            "hut.yaml:5:28: there is no key 'capcity' in battery; did you mean 'capacity'?",
            "hut.yaml:6:17: expected a shunt rating such as 100 A / 75 mV, but found '75 mV'",
            "hut.yaml:7:9: there is no key 'absorbtion' in gauge; did you mean 'absorption'?",
            "hut.yaml:7:35: 90 s is finer than 1 min, the smallest step here",
            "hut.yaml:8:30: load 'lamp' needs exactly one of current, power, resistance",
            "hut.yaml:9:28: nothing here is called 'lmap'; did you mean 'lamp'?",
            "hut.yaml:10:29: 'reading' cannot be 'charge'; expected one of: state-of-charge,"
        };
        String[] found =
                Samples.problemsOf(text)
                        .lines()
                        .filter(line -> line.startsWith("hut.yaml"))
                        .toArray(String[]::new);
        assertEquals(starts.length, found.length, String.join("\n", found));
        for (int i = 0; i < starts.length; i++) {
            assertTrue(found[i].startsWith(starts[i]), found[i]);
        }
    }

    /** Each row adds one line to the smallest file, whose own five lines are right. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "title: Again|6:1: 'title' stands twice in the scenario; the first is on line 2",
                "sede: 4|6:1: there is no key 'sede' in the scenario; did you mean 'seed'?",
                "seed: x|6:7: expected a whole number from -2305843009213693951 to"
                        + " 2305843009213693951 such as 1, but found 'x'",
                "loads: {a: {current: 1 A, on-for: 0 s, every: 1 h}}|6:35: 'on-for' must be 1 ms"
                        + " to 366 d, but is 0 s",
                "seed:|6:1: 'seed' has no value; expected 'seed: 1'",
                "tick: [1 s]|6:7: expected 'tick: 2 h 30 min', but found a list",
                "tick: 61 s|6:7: 'tick' must be 1 ms to 1 min, but is 1 min 1 s",
                "tick: 7 s|3:11: 'duration' must be a whole number of ticks of 7000 ms",
                "gauge: 4|6:8: expected keys and values under gauge, but found '4'",
                "gauge: {absorption: 80 V}|6:21: the gauge's 'absorption' must be at most"
                        + " voltage-full-scale (65536 mV), else full cannot be seen, but is 80 V",
                "gauge: {taper: 30 %}|6:16: 'taper' must be 0.1 % to 20 %, but is 30 %",
                "gauge: {kind: plain-counter, start: unknown}|6:30: a plain counter counts from"
                        + " what is declared; expected 'start: 80 %'",
                "loads: {isolator: {current: 1 A}}|6:9: the name 'isolator' is taken by the"
                        + " scenario itself",
                "loads: {Lamp: {current: 1 A}}|6:9: a name is lower-case letters, digits and"
                        + " hyphens, at most 31, such as 'lamp-2'; found 'Lamp'",
                "loads: {a: {current: 1 A, every: 1 h}}|6:27: a cycling load needs both, such as"
                        + " 'on-for: 10 min' and 'every: 30 min'",
                "loads: {a: {}}|6:12: load 'a' needs exactly one of current, power, resistance,"
                        + " profile, such as 'current: 1.2 A'",
                "chargers: {a: {float: 15 V}}|6:16: 'float' must be at most 'absorption', such as"
                        + " 13.6 V under 14.4 V",
                "timeline: {at: 2 h}|6:11: expected a list such as '- {at: 2 h, set: {lamp: on}}',"
                        + " but found keys and values",
                "timeline: [{set: {isolator: open}}]|6:12: expected either 'at: 2 h' or both"
                        + " 'from: 18 h' and 'to: 23 h'",
                "timeline: [{at: 2 d, set: {isolator: open}}]|6:17: 'at' must be 0 s to 1 d, but"
                        + " is 2 d",
                "timeline: [{at: 2 h, set: {isolator: on}}]|6:38: 'isolator' cannot be 'on';"
                        + " expected one of: open, closed",
                "timeline: [{from: 1 h, to: 2 h, set: {gauge.declare: 1 %}}]|6:39: a declaration"
                        + " does not end; expected 'at: 2 h' for it",
                "timeline: [{at: 0 s, every: 1 s, set: {isolator: open}}]|6:22: the timeline would"
                        + " make more than 10000 changes; a load that cycles has 'on-for' and"
                        + " 'every' of its own",
                "expect: [{at: 1 d, event: set-to-full}]|6:11: an expectation has exactly one of"
                        + " 'at: 7 d', 'throughout: true', 'by: 6 h', 'never: true', 'once: true',"
                        + " or counts an event such as 'event: set-to-full'",
                "expect: [{event: set-to-full}]|6:10: an event is counted: expected 'times: 1', or"
                        + " 'at-least: 1', 'at-most: 3' or both, or one of 'by: 6 h',"
                        + " 'never: true', 'once: true'",
                "expect: [{by: 1 d, never: true, reading: voltage, is: 1 V}]|6:10: an expectation"
                        + " has exactly one of 'at: 7 d', 'throughout: true', 'by: 6 h',"
                        + " 'never: true', 'once: true', or counts an event such as"
                        + " 'event: set-to-full'",
                "expect: [{by: 1 d, to: 2 d, reading: voltage, is: 1 V}]|6:20: 'by' is the end"
                        + " already; expected 'by' or 'to'",
                "expect: [{never: true, reading: voltage, at-least: 1 V, at-most: 2 V}]|6:57: two"
                        + " limits are two expectations, and each could be true at another"
                        + " minute; expected 'within: 1 V' with 'of: 13 V'",
                "expect: [{at: 1 d, register: full-counts, is: 1}]|6:30: 'register' cannot be"
                        + " 'full-counts'; did you mean 'full-count'?",
                "expect: [{at: 1 d, register: full-count, is: 1 A}]|6:46: expected a whole number"
                        + " from -2305843009213693951 to 2305843009213693951 such as 10, but found"
                        + " '1 A'",
                "expect: [{at: 1 d, reading: average-current, within: 1 A, of: truth}]|6:63:"
                        + " 'average-current' cannot be compared with the truth; expected a value"
                        + " such as 'of: 4.2 A'",
                "expect: [{event: declared, first: {from: 2 h, to: 1 h}}]|6:51: 'to' must not be"
                        + " before 'from'",
                "expect: [{at: 1 d, reading: available-charge, within: 1 Ah, of: truth}]|6:65:"
                        + " 'available-charge' cannot be compared with the truth; expected a value"
                        + " such as 'of: 60 Ah'",
                "expect: [{at: 1 d, reading: current, gauge: plane, at-most: 1 A}]|6:45: 'gauge'"
                        + " cannot be 'plane'; expected one of: gauge",
                "tags: [Winter]|6:8: a tag is lower-case letters, digits and hyphens, at most 31,"
                        + " such as 'winter'; found 'Winter'",
                "tags: [winter, winter]|6:16: 'winter' stands twice",
                "tags: winter|6:7: expected a list such as '- winter', but found 'winter'",
                "covers: [[F4]]|6:10: a number is letters, digits and . _ / -, at most 64, such as"
                        + " 'F4'; found a list",
                "symptom: ' '|6:10: expected one line of at most 200 characters such as 'symptom:"
                        + " The display stays at 99 %.'",
                "expect: [{event: declared, times: 1, expected-to-fail: ' '}]|6:56: expected a"
                        + " reason such as 'expected-to-fail: \"the float path is off\"'",
                "expect: [{event: declared, at-least: 1, at-most: 2, expected-to-fail: x}]|6:53:"
                        + " two limits are two expectations, and one of them may hold; expected"
                        + " one entry with 'at-least: 1' and another with 'at-most: 3'",
                "timeline: [{at: 2 h, command: new-battery, set: {isolator: open}}]|6:22: a"
                        + " step has either 'set' or 'command'; expected two steps",
                "timeline: [{at: 2 h, command: reboot}]|6:31: 'command' cannot be 'reboot';"
                        + " expected one of: new-battery, forget-measured, zero-adjustment,"
                        + " span-adjustment",
                "timeline: [{at: 2 h, command: span-adjustment}]|6:12: 'meter' is missing in this"
                        + " timeline step; expected 'meter: -10 A'",
                "timeline: [{at: 2 h, command: new-battery, meter: 1 A}]|6:44: 'meter' goes with"
                        + " 'command: span-adjustment' only",
                "timeline: [{from: 2 h, to: 3 h, command: new-battery}]|6:33: a command does not"
                        + " end; expected 'at: 2 h' for it",
                "timeline: [{at: 2 h, set: {gauge.capacity: 20000 Ah}}]|6:44: 'gauge.capacity'"
                        + " must be 100 mAh to 10000 Ah, but is 20000 Ah",
                "timeline: [{at: 2 h, set: {gauge.absorption: 80 V}}]|6:12: from 2 h the settings"
                        + " of 'gauge' contradict each other: 'absorption' must be at most"
                        + " voltage-full-scale (65536 mV), else full cannot be seen, but is 80 V;"
                        + " settings that change together stand in one 'set'",
                "about: *x|6:8: anchors (&name) and aliases (*name) are not used in scenarios;"
                        + " write the value out, or put the text in quotes",
                "about: !!str x|6:8: tags (!name) are not used in scenarios; put the text in"
                        + " quotes",
                "about: a: b|6:9: this is not YAML (mapping values are not allowed here); a text"
                        + " with ': ' in it needs quotes, such as title: \"Week 1: rain\"",
                "--- {}|6:1: one file holds one scenario; remove the '---'",
                "[a]: b|6:1: expected a word as key, such as 'capacity', but found a list"
            })
    void shouldReportOneProblemWithItsPlace(String line, String message) {
        String found =
                Samples.problemsOf(Samples.SMALLEST + line + "\n").lines().findFirst().orElse("");
        assertEquals("hut.yaml:" + message, found);
    }

    @Test
    void shouldNameTheQuotesThatAConverterNeedsInsideBraces() {
        String found =
                Samples.problemsOf(
                        Samples.SMALLEST.replace("75 mV", "75 mV, converter: 20 bit, 100 mV"));
        assertTrue(found.contains("a value with a comma needs quotes, such as"), found);
    }

    @Test
    void shouldLeadASettingThatFollowsFromTheSensorBackToTheSensor() {
        assertEquals(
                "hut.yaml:5:10: the gauge's 'shunt-rated-drop' must be at most shunt-full-scale"
                        + " (100000 uV), else the rated current cannot be read, but is 150 mV,"
                        + " which follows from this; write it under 'gauge' to change it",
                Samples.problemsOf(Samples.SMALLEST.replace("75 mV", "150 mV"))
                        .lines()
                        .findFirst()
                        .orElse(""));
        String cut = Samples.problemsOf(Samples.SMALLEST.replace("100 A", "33.3333 A"));
        assertTrue(
                cut.startsWith(
                        "hut.yaml:5:10: 33.3333 A is finer than 1 mA, the step of the gauge's"
                                + " 'shunt-rated-current'"),
                cut);
    }

    @Test
    void shouldRefuseATabAsIndent() {
        String found = Samples.problemsOf(Samples.SMALLEST + "loads:\n\tlamp: {current: 1 A}\n");
        assertTrue(found.startsWith("hut.yaml:7:1: a tab in the indent; expected spaces"), found);
    }

    @Test
    void shouldRefuseDepthBeforeItBuildsATree() {
        String found = Samples.problemsOf("about: " + "[".repeat(100_000));
        assertTrue(found.contains("nested deeper than 16 levels"), found);
    }

    @Test
    void shouldRefuseMoreTicksThanARunCanHave() {
        String found = Samples.problemsOf(Samples.SMALLEST.replace("1 d", "24000 d"));
        assertTrue(
                found.startsWith("hut.yaml:3:11: 'duration' must be at most 2000000000 ticks"),
                found);
    }

    @Test
    void shouldCloseALongListOfProblems() {
        StringBuilder text = new StringBuilder(Samples.SMALLEST);
        for (int i = 0; i < 150; i++) {
            text.append("wrong-").append(i).append(": 1\n");
        }
        assertTrue(Samples.problemsOf(text.toString()).contains("and 50 more problems"));
    }

    @Test
    void shouldNameWhatIsWrongWithAFileAsAWhole(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("hut.yaml");
        assertEquals("there is no such file", onlyMessage(file));
        assertTrue(onlyMessage(folder).startsWith("this is a folder"));
        Files.writeString(file, "");
        assertTrue(onlyMessage(file).startsWith("the file is empty"));
        Files.writeString(file, "# nothing but a comment\n");
        assertTrue(onlyMessage(file).startsWith("the file is empty"));
        Files.write(file, "title: Fl\u00fcgel".getBytes(StandardCharsets.ISO_8859_1));
        assertEquals("a byte here is not UTF-8; save the file as UTF-8", onlyMessage(file));
        Files.write(file, new byte[ScenarioReader.LARGEST_BYTES + 1]);
        assertTrue(onlyMessage(file).startsWith("the file is larger than 1 MiB"));
        Files.writeString(file, "title: \u0007");
        assertEquals("the character U+0007 cannot stand here; remove it", onlyMessage(file));
    }

    private static String onlyMessage(Path file) {
        ScenarioException refusal =
                assertThrows(ScenarioException.class, () -> ScenarioReader.read(file));
        assertEquals(1, refusal.problems().size(), refusal.render());
        return refusal.problems().get(0).message();
    }
}
