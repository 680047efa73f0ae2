package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One file, several runs: every report says which of them it speaks of. */
class RunVariantsTest {
    private static final String TWENTY = "battery.temperature=20 °C";
    private static final String FAILS = "at: 1 d, reading: state-of-charge, at-least: 90 %";

    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path file;

    @BeforeEach
    void writeScenario() throws IOException {
        file = folder.resolve("hut.yaml");
        Files.writeString(
                file, Samples.expecting(FAILS) + "vary:\n  battery.temperature: [-10 °C, 20 °C]\n");
    }

    @Test
    void theTableAndTheXmlTellTheRunsApart() throws IOException {
        Path xml = folder.resolve("out.xml");
        assertEquals(1, terminal.run("run", "--junit", xml.toString(), file.toString()));
        for (String temperature : List.of("-10 °C", "20 °C")) {
            String name = "hut.yaml [battery.temperature=" + temperature + "]";
            String last = terminal.out().substring(terminal.out().indexOf("worst first"));
            assertTrue(last.contains(name), last);
            assertTrue(Files.readString(xml).contains(name), temperature);
        }
    }

    @Test
    void theCommandOfAFailureRunsThatRunAndNoOther() {
        assertEquals(1, terminal.run("run", file.toString()));
        Matcher printed = Pattern.compile("--variant '(.*)' --at '(.*)' ").matcher(terminal.out());
        assertTrue(printed.find(), terminal.out());
        FakeTerminal again = new FakeTerminal();
        int exitCode =
                again.run(
                        "run",
                        "--variant",
                        printed.group(1),
                        "--at",
                        printed.group(2),
                        file.toString());
        assertEquals(0, exitCode, again.err());
        assertTrue(again.out().contains("[" + printed.group(1) + "]"), again.out());
    }

    @Test
    void aNameThatNoRunHasIsRefusedWithTheNearest() {
        assertEquals(
                2, terminal.run("run", "--variant", "battery.temperature=2 °C", file.toString()));
        assertTrue(
                terminal.err().contains("did you mean 'battery.temperature=20 °C'?"),
                terminal.err());
    }

    private int runSeeds(String seeds, String... more) {
        List<String> words = new ArrayList<>(List.of("run", "--seeds", seeds));
        words.addAll(List.of(more));
        return terminal.run(words.toArray(new String[0]));
    }

    @Test
    void seedsOfTheCommandLineGoBeforeThoseOfTheFile() throws IOException {
        String text = Samples.expecting(FAILS);
        Path varied = Files.writeString(folder.resolve("v.yaml"), text + "vary: {seed: [8, 9]}\n");
        Path ranged = Files.writeString(folder.resolve("w.yaml"), text + "seeds: 1..3\n");
        assertEquals(1, runSeeds("5..6", "--json", folder.toString()));
        List<String> runs = terminal.out().lines().toList();
        assertEquals(8, runs.size(), terminal.out());
        for (String seed : List.of("5", "6")) {
            for (String name :
                    List.of(
                            file + "\",\"variant\":\"battery.temperature=20 °C, seed=" + seed,
                            varied + "\",\"variant\":\"seed=" + seed,
                            ranged + "\",\"variant\":\"seed=" + seed)) {
                List<String> found = runs.stream().filter(it -> it.contains(name + "\"")).toList();
                assertEquals(1, found.size(), name + " in " + terminal.out());
                assertTrue(found.get(0).contains("\"seed\":" + seed + ","), found.get(0));
            }
        }
    }

    @Test
    void theCommandOfAFailureKnowsTheSeedsOfTheCommandLine() {
        assertEquals(1, runSeeds("5..6", "--variant", TWENTY + ", seed=6", file.toString()));
        String command = terminal.out().replaceAll(" \\\\\n +", " ");
        assertTrue(command.contains(" --seeds 6 --variant '" + TWENTY + ", seed=6' "), command);
        FakeTerminal again = new FakeTerminal();
        int exitCode =
                again.run(
                        "run",
                        "--seeds",
                        "6",
                        "--variant",
                        TWENTY + ", seed=6",
                        "--at",
                        "1 d",
                        file.toString());
        assertEquals(0, exitCode, again.err());
    }

    @Test
    void everySeedHasItsSuiteInTheXml() throws IOException {
        Path xml = folder.resolve("seeds.xml");
        assertEquals(1, runSeeds("-1..1", "--junit", xml.toString(), file.toString()));
        for (int seed = -1; seed <= 1; seed++) {
            String name = "hut.yaml [" + TWENTY + ", seed=" + seed + "]\"";
            assertTrue(Files.readString(xml).contains(name), name);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"2..1", "1-3", "", "1..20000", "many"})
    void textThatIsNoRangeOfSeedsIsRefusedWithAnExample(String seeds) {
        assertEquals(2, runSeeds(seeds, file.toString()));
        assertTrue(terminal.err().contains("--seeds"), terminal.err());
        assertTrue(terminal.err().contains("such as 1..100"), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void moreRunsThanAFileMayMakeAreRefusedBeforeAnythingRuns() {
        assertEquals(2, runSeeds("1..10000", file.toString()));
        assertTrue(terminal.err().contains("20000 runs; expected at most 10000"), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void oneSeedAndManyAreNotAskedForAtOnce() {
        assertEquals(2, runSeeds("1..2", "--seed", "7", file.toString()));
        assertTrue(terminal.err().contains("expected one of them"), terminal.err());
    }
}
