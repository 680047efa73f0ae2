package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.units.RecordUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a study file can say, and what is told where it says something else. */
class StudyReaderTest {
    private static final String HEAD = "format: 1\ntitle: A study\nscenario: day.yaml\n";
    private static final String OFFSET = "  sensor.offset: {rectangular: [-3 uV, 3 uV]}\n";

    @TempDir private Path folder;

    @BeforeEach
    void fill() throws IOException {
        Files.writeString(
                folder.resolve("day.yaml"),
                """
                format: 1
                title: A day
                duration: 1 d
                seeds: 1..3
                vary: {battery.start: [50 %, 60 %]}
                battery: {chemistry: lead-acid-agm, capacity: 60 Ah}
                sensor: {shunt: 100 A / 75 mV}
                loads: {lamp: {current: 1 A}}
                """);
    }

    private StudySpec read(String text) throws ScenarioException {
        try {
            return StudyReader.read(Files.writeString(folder.resolve("a.study"), text));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private StudySpec tolerances(String lines) throws ScenarioException {
        return read(HEAD + "tolerances:\n" + lines);
    }

    private void assertTold(String text, String place, String... words) {
        ScenarioException e = assertThrows(ScenarioException.class, () -> read(text));
        String told = e.render();
        assertTrue(told.contains(place + ": "), told);
        for (String word : words) {
            assertTrue(told.contains(word), word + " in " + told);
        }
    }

    private void assertTolerance(String line, String place, String... words) {
        assertTold(HEAD + "tolerances:\n  " + line + "\n", "a.study:" + place, words);
    }

    @Test
    void everyShapeIsRead() throws ScenarioException {
        StudySpec spec =
                tolerances(
                        OFFSET
                                + "  sensor.shunt-error: {class: 0.5}\n"
                                + "  loads.lamp.current: {triangular: [0.9 A, 1.1 A]}\n"
                                + "  battery.temperature: {normal: 20 °C,"
                                + " standard-uncertainty: 5 K}\n"
                                + "  battery.ageing.capacity-loss: {arcsine: [1 %, 9 %]}\n"
                                + "  sensor.gain-error: {trapezoidal: [-1 %, 1 %], top: 50 %}\n"
                                + "  gauge.capacity: {normal: 60 Ah, standard-uncertainty: 1 Ah}\n"
                                + "  wiring.joint-resistance: {rectangular: [1 mOhm, 9 mOhm]}\n");
        assertEquals(8, spec.tolerances().size());
        Tolerance offset = spec.tolerances().get(0);
        assertEquals(RecordUnit.NANOVOLTS, offset.unit());
        assertEquals(-3_000, offset.lower());
        assertEquals(3_000, offset.upper());
        assertEquals(100_000_000, offset.maximum());
        Tolerance shunt = spec.tolerances().get(1);
        assertEquals(Tolerance.Kind.RECTANGULAR, shunt.kind());
        assertEquals(5_000, shunt.upper());
        Tolerance temperature = spec.tolerances().get(3);
        assertEquals(20_000, temperature.lower());
        assertEquals(25_000, temperature.upper());
        assertEquals(500_000, spec.tolerances().get(5).topPartsPerMillion());
        assertEquals(1, spec.cases().size(), "what the scenario itself varies is left alone");
        assertEquals(900_000, spec.everyMillis(), "a day in at most 120 moments");
        assertEquals(1_000, spec.devices());
        assertFalse(spec.claim().isMade());
    }

    @Test
    void aDeviceIsTheScenarioWithItsValues() throws ScenarioException {
        StudySpec spec = tolerances(OFFSET + "  loads.lamp.current: {rectangular: [1 A, 2 A]}\n");
        Scenario device =
                spec.cases().get(0).template().with(new long[] {1_234, 1_500_000}, "device 3", 99);
        assertEquals(1_234, device.sensor().offsetNanovolts());
        assertEquals(1_500_000, device.loads().get(0).amount());
        assertEquals(99, device.seed());
        assertEquals("device 3", device.variant());
    }

    @Test
    void whatVariesMakesCases() throws ScenarioException {
        StudySpec spec =
                read(
                        HEAD
                                + "tolerances:\n"
                                + OFFSET
                                + "vary:\n  battery.start: [20 %, 30 %, 40 %]\n");
        assertEquals(3, spec.cases().size());
        assertEquals("battery.start=30 %", spec.cases().get(1).name());
    }

    @Test
    void theDigestCoversWhatDevicesAreMadeOf() throws ScenarioException {
        String first = tolerances(OFFSET).digest();
        assertEquals(first, read(HEAD + "# words\ntolerances:\n" + OFFSET).digest());
        assertEquals(first, read(HEAD + "devices: 50\ntolerances:\n" + OFFSET).digest());
        assertFalse(first.equals(read(HEAD + "seed: 2\ntolerances:\n" + OFFSET).digest()));
        assertFalse(first.equals(tolerances(OFFSET.replace("3 uV]", "4 uV]")).digest()));
        assertFalse(first.equals(read(HEAD + "every: 1 h\ntolerances:\n" + OFFSET).digest()));
    }

    @Test
    void addressesAreToldWhereTheyStand() {
        assertTolerance(
                "sensor.ofset: {rectangular: [-3 uV, 3 uV]}", "5:3", "did you mean 'offset'?");
        assertTolerance("loads.pump.current: {rectangular: [1 A, 2 A]}", "5:3", "'pump'");
        assertTolerance("sensor.shunt: {rectangular: [1 A, 2 A]}", "5:3", "is no single quantity");
        assertTolerance("title: {rectangular: [1 A, 2 A]}", "5:3", "such as 'battery.temperature'");
    }

    @Test
    void shapesAreToldWhereTheyStand() {
        assertTolerance("sensor.offset: 3 uV", "5:18", "expected a shape", "but found '3 uV'");
        assertTolerance("sensor.offset: {rectangle: [-3 uV, 3 uV]}", "5:3", "'rectangular'?");
        assertTolerance("sensor.offset: {class: 1, normal: 1 uV}", "5:3", "two shapes");
        assertTolerance("sensor.offset: {class: 0.5}", "5:19", "limit in percent", "14.4 V");
        assertTolerance("sensor.shunt-error: {class: 0.5 %}", "5:31", "class index such as 0.5");
        assertTolerance("sensor.offset: {rectangular: [3 uV, -3 uV]}", "5:33", "lower end");
        assertTolerance("sensor.offset: {rectangular: [3 A, 4 A]}", "5:33", "which is a current");
        assertTolerance("sensor.offset: {rectangular: 3 uV}", "5:32", "two ends");
        assertTolerance("sensor.offset: {rectangular: [1 nV, 9 nV]}", "5:32", "20 steps");
        assertTolerance(
                "sensor.offset: {normal: 0 uV}", "5:18", "'standard-uncertainty' is missing");
        assertTolerance("sensor.offset: {rectangular: [-3 uV, 1 V]}", "5:32", "reach from");
        assertTolerance(
                "battery.coulombic-efficiency: {normal: 99 %, standard-uncertainty: 1 %}",
                "5:42", "must be 50 % to 100 %", "four times the spread");
        assertTolerance("sensor.offset: {trapezoidal: [-3 uV, 3 uV]}", "5:18", "'top' is missing");
        assertTolerance(
                "sensor.offset: {rectangular: [-3 uV, 3 uV], tpo: 1}", "5:47", "no key 'tpo'");
    }

    @Test
    void keysOfTheStudyAreToldWhereTheyStand() {
        String end = "tolerances:\n" + OFFSET;
        assertTold(
                "format: 1\n", "a.study:1:1", "'tolerances' is missing", "'scenario' is missing");
        assertTold(HEAD + end + "device: 5\n", "a.study:6:1", "did you mean 'devices'?");
        assertTold(HEAD + end + "devices: 5\n", "a.study:6:10", "from 20 to 100000");
        assertTold(HEAD + end + "devices: {at-most: 500}\n", "a.study:6:10", "expected one of");
        assertTold(HEAD + end + "reading: time-to-full\n", "a.study:6:10", "cannot be");
        assertTold(HEAD + end + "gauge: other\n", "a.study:6:8", "no gauge of the scenario");
        assertTold(HEAD + end + "every: 90 s\n", "a.study:6:8", "whole minutes");
        assertTold(HEAD + end + "every: 1 min\n", "a.study:6:8", "more than 240 moments");
        assertTold(HEAD + end + "from: 2 d\n", "a.study:6:7", "must be");
        assertTold(HEAD + end + "expect: {within: 3}\n", "a.study:6:18", "without a unit");
        assertTold(HEAD + end + "vary: {sensor.offset: [1 uV]}\n", "a.study:5:3", "'vary' too");
        assertTold(HEAD + end + "vary: {battery.strat: [1 %]}\n", "a.study:6:8", "did you mean");
        assertTold("", "a.study:1:1", "the file is empty");
        assertTold("format: 2\n" + end, "a.study:1:9", "expected 'format: 1'");
        assertTold(
                HEAD.replace("day.yaml", "none.yaml") + end,
                "a.study:3:11",
                "there is no such file");
    }

    @Test
    void problemsOfTheScenarioAreToldInTheScenario() throws IOException {
        Path scenario = folder.resolve("day.yaml");
        Files.writeString(scenario, Files.readString(scenario).replace("60 Ah}", "60 A}"));
        assertTold(HEAD + "tolerances:\n" + OFFSET, "day.yaml:6:47", "which is a current");
    }

    @Test
    void aScenarioIsNoStudy() throws IOException {
        String text = Files.readString(folder.resolve("day.yaml"));
        assertTold(text, "a.study:1:1", "this is a scenario");
    }
}
