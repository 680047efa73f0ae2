package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exit codes and messages, through the program's own entry. */
class MainTest {
    private static final String HOLDS = "at: 1 d, reading: state-of-charge, within: 1 %, of: truth";
    private static final String FAILS = "at: 1 d, reading: state-of-charge, at-least: 90 %";

    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path good;
    private Path bad;
    private Path hollow;

    @BeforeEach
    void writeScenarios() throws IOException {
        good = Files.writeString(folder.resolve("good.yaml"), Samples.expecting(HOLDS));
        bad = Files.writeString(folder.resolve("bad.yaml"), Samples.expecting(HOLDS, FAILS));
        hollow = Files.writeString(folder.resolve("hollow.yaml"), Samples.hut());
    }

    @Test
    void shouldEndWith0WhenAllHolds() {
        assertEquals(0, terminal.run("run", good.toString()), terminal.err());
        assertTrue(terminal.out().startsWith("PASSED: 1 of 1 expectations hold\n"), terminal.out());
        assertEquals("", terminal.err());
    }

    @Test
    void shouldEndWith1AndSayWhatFailedFirst() {
        assertEquals(1, terminal.run("run", "--seed", "42", bad.toString()));
        String out = terminal.out();
        assertTrue(out.startsWith("FAILED: 1 of 2 expectations hold\n"), out);
        String asAShellReads = out.replaceAll(" \\\\\n +", " ");
        assertAll(
                () -> assertTrue(out.contains("- state-of-charge at 1 d: at least 90 %"), out),
                () -> assertTrue(out.contains("found 36.0"), out),
                () -> assertTrue(asAShellReads.contains("--seed 42 --trace trace.csv " + bad), out),
                () -> assertTrue(out.contains("at 1 d 00:00:00 gauge shows 36.0"), out),
                () -> assertTrue(out.contains("full-charge rule waiting"), out),
                () -> assertTrue(out.contains("bad.yaml:12:5"), out));
    }

    @Test
    void shouldSayNoVerdictForASingleFileThatExpectsNothing() {
        assertEquals(0, terminal.run("run", hollow.toString()));
        assertTrue(terminal.out().startsWith("NO VERDICT: expects nothing\n"), terminal.out());
        assertTrue(terminal.out().contains("this run proves nothing"), terminal.out());
    }

    @Test
    void aListIsNotGreenWhileOneOfItsFilesExpectsNothing() {
        assertEquals(1, terminal.run("run", good.toString(), hollow.toString()));
        assertTrue(
                terminal.out().endsWith("2 scenarios: 1 passed, 0 failed, 1 without a verdict\n"),
                terminal.out());
    }

    @Test
    void shouldRefuseAMissingFileAndNameTheNearest() {
        assertEquals(2, terminal.run("run", folder.resolve("goood.yaml").toString()));
        assertTrue(terminal.err().contains("no such file; did you mean " + good), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void aMissingFileHidesNoMistakeOfAnother() throws IOException {
        Path mistaken = Files.writeString(folder.resolve("mistaken.yaml"), "format: 9\n");
        assertEquals(
                2, terminal.run("run", mistaken.toString(), folder.resolve("none").toString()));
        assertTrue(terminal.err().startsWith(folder + "/none: no such file"), terminal.err());
        assertTrue(terminal.err().contains("mistaken.yaml:1:"), terminal.err());
        assertTrue(terminal.err().endsWith(" problems; nothing ran\n"), terminal.err());
    }

    @Test
    void shouldRefuseAFolderWithoutScenarios() throws IOException {
        Path parts = Files.createDirectories(folder.resolve("empty/parts"));
        Files.writeString(parts.resolve("battery.yaml"), "chemistry: lifepo4\n");
        assertEquals(2, terminal.run("run", folder.resolve("empty").toString()));
        assertTrue(terminal.err().contains("no scenario in this folder"), terminal.err());
    }

    @Test
    void shouldRefuseAPatternThatMatchesNothing() {
        assertEquals(2, terminal.run("run", folder + "/*.yml"));
        assertTrue(terminal.err().contains("no scenario matches"), terminal.err());
    }

    @Test
    void shouldExpandPatternsItself() {
        assertEquals(0, terminal.run("check", folder + "/g*.yaml"), terminal.err());
        assertTrue(terminal.out().contains("good.yaml: good; 1 expectation;"), terminal.out());
        assertEquals(1, terminal.out().lines().count());
    }

    @Test
    void shouldTellAllProblemsOfAllFilesBeforeAnythingRuns() throws IOException {
        Path first = Files.writeString(folder.resolve("w1.yaml"), Samples.hut() + "lods: {}\n");
        Path second = Files.writeString(folder.resolve("w2.yaml"), "format: 1\n");
        String[] args = {"run", good.toString(), first.toString(), second.toString()};
        assertEquals(2, terminal.run(args));
        assertEquals("", terminal.out());
        assertTrue(terminal.err().contains("w1.yaml:10:1"), terminal.err());
        assertTrue(terminal.err().contains("w2.yaml"), terminal.err());
        assertTrue(terminal.err().contains("problems; nothing ran"), terminal.err());
        assertFalse(terminal.err().contains("Exception"), terminal.err());
    }

    @Test
    void shouldNameTheNearestCommandAndOption() {
        assertEquals(2, terminal.run("rnu", good.toString()));
        assertTrue(terminal.err().contains("did you mean 'run'?"), terminal.err());
        FakeTerminal second = new FakeTerminal();
        assertEquals(2, second.run("run", "--trase=x.csv", good.toString()));
        assertTrue(second.err().contains("did you mean '--trace'?"), second.err());
    }

    @Test
    void shouldRefuseSeedsAndIntervalsThatAreNone() {
        assertEquals(2, terminal.run("run", "--seed", "lucky", good.toString()));
        assertTrue(terminal.err().contains("expected a whole number"), terminal.err());
        FakeTerminal second = new FakeTerminal();
        assertEquals(2, second.run("run", "--trace-every", "0 s", good.toString()));
        assertTrue(second.err().contains("such as '10 s'"), second.err());
    }

    @Test
    void shouldShowHelpWithExitCodesIn80Columns() {
        for (String command :
                new String[] {
                    "", "run", "check", "covers", "compare", "vectors", "replay", "adopt", "live"
                }) {
            FakeTerminal each = new FakeTerminal();
            String[] args =
                    command.isEmpty() ? new String[] {"--help"} : new String[] {command, "--help"};
            assertEquals(0, each.run(args), each.err());
            assertTrue(each.out().contains("Exit codes:"), each.out());
            assertTrue(each.out().contains("Example"), each.out());
            assertTrue(each.out().lines().allMatch(line -> line.length() <= 80), each.out());
        }
    }

    @Test
    void shouldAskAScriptForACommand() {
        FakeTerminal server = new FakeTerminal(false, Map.of("CI", "true"));
        assertEquals(2, server.run());
        assertTrue(server.err().contains("No command given"), server.err());
    }

    @Test
    void shouldSayFirstHowToOpenThePageWhenAPersonTypesNoCommand() {
        FakeTerminal person = new FakeTerminal(true, Map.of());
        assertEquals(0, person.run());
        assertTrue(person.out().startsWith("gauge-sim live "), person.out());
        assertEquals("", person.err());
    }

    @Test
    void shouldShowItsVersion() {
        assertEquals(0, terminal.run("--version"));
        assertTrue(terminal.out().startsWith("gauge-sim "), terminal.out());
    }

    @Test
    void colourComesOnATerminalOnlyAndNotWhereRefused() {
        String escape = "\u001b[";
        assertEquals(0, terminal.run("run", good.toString()));
        assertFalse(terminal.out().contains(escape), "not a terminal");
        FakeTerminal person = new FakeTerminal(true, Map.of());
        assertEquals(0, person.run("run", good.toString()));
        assertTrue(person.out().contains(escape), "a terminal");
        FakeTerminal refusing = new FakeTerminal(true, Map.of("NO_COLOR", "1"));
        assertEquals(0, refusing.run("run", good.toString()));
        assertFalse(refusing.out().contains(escape), "NO_COLOR");
        FakeTerminal unset = new FakeTerminal(true, Map.of("NO_COLOR", ""));
        assertEquals(0, unset.run("run", good.toString()));
        assertTrue(unset.out().contains(escape), "an empty NO_COLOR asks for nothing");
    }

    @Test
    void aDefectOfOursEndsWith70AndHidesItsStackTraceUntilAskedFor() {
        assertEquals(70, terminal.runBroken("run", good.toString()));
        assertTrue(terminal.err().startsWith("gauge-sim has a defect: "), terminal.err());
        assertFalse(terminal.err().contains("\tat "), terminal.err());
        FakeTerminal second = new FakeTerminal();
        assertEquals(70, second.runBroken("run", "--debug", good.toString()));
        assertTrue(second.err().contains("\tat org.gaugebench.sim.cli"), second.err());
    }

    @Test
    void aWordTooManyAndALetterForANumberAreToldInPlainWords() {
        FakeTerminal word = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, word.run("ahead", "missing.yaml"));
        assertTrue(
                word.err().startsWith("gauge-sim ahead: 'missing.yaml' is one word too many"),
                word.err());
        FakeTerminal letter = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, letter.run("agree", "--device", "x", "--seed", "y"));
        assertTrue(letter.err().contains("'y' is no whole number; expected one"), letter.err());
    }
}
