package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Scenarios put together from parts. */
class PartReaderTest {
    private static final String HEAD = "format: 1\ntitle: T\nduration: 1 d\n";
    private static final String BATTERY =
            "battery: {chemistry: lead-acid-agm, capacity: 60 Ah, start: 70 %}\n";
    private static final String SENSOR = "sensor: {shunt: 100 A / 75 mV}\n";

    @TempDir private Path folder;

    private Path write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.resolveSibling("."));
        return Files.writeString(file, text);
    }

    private String problems(Path file) {
        return assertThrows(ScenarioException.class, () -> ScenarioReader.read(file)).render();
    }

    @Test
    void aPartGivesABlockAndTheScenariosOwnKeysWin() throws IOException, ScenarioException {
        write("parts/a/bank.yaml", BATTERY);
        write("parts/shunt.yaml", "battery: {start: 20 %, temperature: 5 °C}\n" + SENSOR);
        Path file =
                write("week.yaml", HEAD + "parts: [a/bank, shunt]\nbattery: {capacity: 80 Ah}\n");
        BatterySpec battery = ScenarioReader.read(file).battery();
        assertEquals(80_000_000L, battery.capacityMicroampHours(), "the scenario's own");
        assertEquals(200_000, battery.startPartsPerMillion(), "the later part's");
        assertEquals(5_000, battery.temperatureMillicelsius(), "the only one's");
    }

    @Test
    void listsAreJoinedThePartsFirst() throws IOException, ScenarioException {
        write(
                "parts/lamp.yaml",
                "loads: {lamp: {current: 1 A}}\ntimeline: [{at: 2 h, set: {lamp: on}}]\n");
        Path file =
                write(
                        "week.yaml",
                        HEAD
                                + BATTERY
                                + SENSOR
                                + "parts: [lamp]\ntimeline: [{at: 2 h, set: {lamp: off}}]\n");
        Scenario scenario = ScenarioReader.read(file);
        assertEquals(List.of(1L, 0L), scenario.changes().stream().map(Change::value).toList());
        Scenario again = ScenarioReader.read("again", ScenarioWriter.resolved(scenario));
        assertEquals(Samples.withoutMarks(scenario), Samples.withoutMarks(again));
    }

    @Test
    void theNearestFolderOfPartsIsTaken() throws IOException, ScenarioException {
        write("parts/bank.yaml", BATTERY);
        write("parts/shunt.yaml", SENSOR);
        write("shelf/parts/bank.yaml", BATTERY.replace("70 %", "30 %"));
        Path file = write("shelf/week.yaml", HEAD + "parts: [bank, shunt]\n");
        assertEquals(300_000, ScenarioReader.read(file).battery().startPartsPerMillion());
    }

    @Test
    void aPartMayNamePartsAndCountsOnce() throws IOException, ScenarioException {
        write("parts/lamp.yaml", "beside: [{name: plain, kind: plain-counter}]\n");
        write("parts/one.yaml", "parts: [lamp]\n" + BATTERY);
        write("parts/two.yaml", "parts: [lamp]\n" + SENSOR);
        Path file = write("week.yaml", HEAD + "parts: [one, two]\n");
        assertEquals(2, ScenarioReader.read(file).gauges().size());
    }

    @Test
    void aProblemInAPartIsToldWithThePartsOwnPlace() throws IOException {
        Path part = write("parts/bank.yaml", "# words\nbattery: {capacity: 0 Ah}\ntitle: no\n");
        Path file = write("week.yaml", HEAD + "parts: [bank]\n" + SENSOR);
        String found = problems(file);
        assertTrue(found.contains(part + ":3:1: 'title' belongs to the scenario"), found);
        write("parts/bank.yaml", "# words\nbattery: {chemistry: lifepo4, capacity: 0 Ah}\n");
        found = problems(file);
        assertTrue(found.contains(part + ":2:41: 'capacity' must be"), found);
        assertTrue(found.contains("\n    battery: {chemistry: lifepo4"), found);
    }

    @Test
    void shouldRefuseEveryNameThatIsNoPart() throws IOException {
        write("parts/list.yaml", "- a\n");
        write("parts/empty.yaml", "# nothing\n");
        write("parts/broken.yaml", "battery: {\n");
        write("parts/huge.yaml", "#".repeat(ScenarioReader.LARGEST_BYTES + 1));
        write("parts/a.yaml", "parts: [b]\n");
        write("parts/b.yaml", "parts: [a]\n");
        write("secret.yaml", BATTERY);
        assertTold("../secret", "a part is named by its file below the folder 'parts'");
        assertTold("/etc/passwd", "a part is named by its file below the folder 'parts'");
        assertTold("bank.yaml", "a part is named by its file below the folder 'parts'");
        assertTold("[x]", "found a list");
        assertTold("nowhere", "there is no part 'nowhere'; expected the file parts/nowhere.yaml");
        assertTold("list", "a part holds blocks such as 'battery: {...}', but found a list");
        assertTold("empty", "the part 'empty' is empty");
        assertTold("broken", "this is not YAML");
        assertTold("huge", "the part 'huge' is larger than 1 MiB");
        assertTold("a", "parts name each other in a circle: a, b, a");
    }

    private void assertTold(String name, String words) throws IOException {
        String found = problems(write("week.yaml", HEAD + "parts: [" + name + "]\n" + SENSOR));
        assertTrue(found.contains(words), found);
        assertTrue(found.contains(".yaml:"), found);
    }

    @Test
    void shouldRefusePartsThatGoTooDeepOrAreTooMany() throws IOException {
        for (int i = 0; i < 7; i++) {
            write("parts/deep-" + i + ".yaml", "parts: [deep-" + (i + 1) + "]\n");
        }
        assertTold("deep-0", "parts name parts deeper than 5 levels");
        StringBuilder names = new StringBuilder("w-0");
        for (int i = 0; i < 51; i++) {
            write("parts/w-" + i + ".yaml", "loads: {}\n");
            names.append(", w-").append(i);
        }
        assertTold(names.toString(), "a scenario has at most 50 parts");
    }

    @Test
    void shouldRefuseALinkThatLeadsOut() throws IOException {
        write("secret.yaml", BATTERY);
        write("parts/bank.yaml", BATTERY);
        try {
            Files.createSymbolicLink(
                    folder.resolve("parts/link.yaml"), folder.resolve("secret.yaml"));
        } catch (UnsupportedOperationException | FileSystemException e) {
            assumeTrue(false, "this file system has no links");
        }
        assertTold("link", "it leads out of the folder parts");
    }

    @Test
    void partsOfTheProgramAreFoundWithoutAnyFile() throws ScenarioException {
        assumeTrue(
                System.getProperty("basedir") != null,
                "the build puts the parts in; without it there are none");
        Scenario scenario = ScenarioReader.read("copied.yaml", HEAD + "parts: [hut]\n");
        assertEquals(60_000_000L, scenario.battery().capacityMicroampHours());
        assertEquals(4, scenario.loads().size());
        assertEquals(2, scenario.changes().size());
    }
}
