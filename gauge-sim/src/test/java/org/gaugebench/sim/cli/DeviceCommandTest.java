package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.gaugebench.sim.device.HostileProgram;
import org.gaugebench.sim.device.JavaProgram;
import org.gaugebench.sim.device.PipeCore;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A program in the place of the main gauge, from the command line to the report. */
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class DeviceCommandTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private String hut = "";

    @BeforeEach
    void write() throws Exception {
        String text =
                Samples.expecting("at: 1 h, reading: state-of-charge, within: 1 %, of: truth");
        hut = Files.writeString(folder.resolve("hut.yaml"), text).toString();
    }

    private static String device(Class<?> main, String... args) {
        return JavaProgram.of(main, args).words().stream()
                .map(word -> "'" + word + "'")
                .collect(Collectors.joining(" "));
    }

    /** A run that took too long ends beside us, an instant later. */
    private static void assertNothingRuns() throws InterruptedException {
        for (int tries = 0; tries < 50 && !running().isEmpty(); tries++) {
            Thread.sleep(100);
        }
        assertEquals(List.of(), running());
    }

    private static List<String> running() {
        return ProcessHandle.current()
                .descendants()
                .map(it -> it.info().commandLine().orElse(""))
                .filter(it -> it.contains(HostileProgram.class.getName()))
                .toList();
    }

    @Test
    void theReportIsThatOfTheCoreAndNamesTheProgram() {
        FakeTerminal own = new FakeTerminal();
        assertEquals(0, own.run("run", hut));
        String device = device(PipeCore.class, "form frames", "batch 256");
        assertEquals(0, terminal.run("run", "--device", device, hut), terminal.err());
        String[] parts = terminal.out().split("(?m)^  program [\\s\\S]*?(?=^  simulated)", -1);
        assertEquals(2, parts.length, terminal.out());
        assertEquals(own.out(), parts[0] + parts[1]);
        String said = terminal.out().replaceAll("\\s+", " ");
        assertTrue(said.contains("program the core behind a pipe, '"), said);
    }

    @Test
    void programsReadTheJsonToo() {
        assertEquals(0, terminal.run("run", "--json", "--device", device(PipeCore.class), hut));
        String start = "\"program\":{\"gauge\":\"gauge\",\"name\":\"the core behind a pipe\",";
        assertTrue(terminal.out().contains(start), terminal.out());
    }

    @Test
    void aMomentShowsWhatTheProgramShows() {
        FakeTerminal own = new FakeTerminal();
        assertEquals(0, own.run("run", "--at", "1 h", hut));
        String device = device(PipeCore.class, "batch 100");
        assertEquals(0, terminal.run("run", "--at", "1 h", "--device", device, hut));
        assertEquals(own.out(), terminal.out());
    }

    @Test
    void severalRunAtOnceAndEachHasItsOwnProgram() {
        String device = device(PipeCore.class, "form frames", "batch 256");
        assertEquals(
                0,
                terminal.run("run", "--threads", "3", "--seeds", "1..6", "--device", device, hut),
                terminal.out());
        assertTrue(terminal.out().contains("6 scenarios: 6 passed"), terminal.out());
    }

    @Test
    void aProgramThatBreaksOffHasAnExitCodeAndAReportOfItsOwn() throws Exception {
        String device = device(HostileProgram.class, "short-line");
        assertEquals(3, terminal.run("run", "--device", device, hut));
        String said = terminal.out().replaceAll("\\s+", " ");
        assertTrue(said.startsWith("BROKE OFF: no verdict"), said);
        assertTrue(said.contains("it answered 'readout 500000': expected 2 figures"), said);
        assertTrue(said.contains("last words of short-line"), said);
        assertTrue(said.contains("to run it alone:") && said.contains("--device "), said);
        assertFalse(said.contains("Exception"), said);
        assertNothingRuns();
    }

    @Test
    void ofSeveralFilesTheOthersRunAndTheTableSaysWhichBrokeOff() {
        String device = device(HostileProgram.class, "dies");
        assertEquals(3, terminal.run("run", "--seeds", "1..2", "--device", device, hut));
        assertTrue(terminal.out().contains("BROKE OFF"), terminal.out());
        assertTrue(terminal.out().contains("2 broke off"), terminal.out());
    }

    @Test
    void aLimitOfTimeEndsTheProgramToo() throws Exception {
        String device = device(HostileProgram.class, "silence");
        assertEquals(1, terminal.run("run", "--timeout", "3 s", "--device", device, hut));
        assertTrue(terminal.out().startsWith("TIMED OUT"), terminal.out());
        assertNothingRuns();
    }

    @Test
    void whatCannotBeAProgramIsToldBeforeAnythingRuns() {
        assertEquals(2, terminal.run("run", "--device", "./no-such-program", hut));
        assertTrue(terminal.err().contains("it cannot be started: No such file"), terminal.err());
        assertEquals(2, terminal.run("run", "--device", "'open", hut));
        assertTrue(terminal.err().contains("the quote ' is not closed"), terminal.err());
        assertEquals(2, terminal.run("run", "--attribution", "--device", "x", hut));
        assertTrue(terminal.err().contains("expected it without --device"), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void aProgramThatDoesNotSayHelloIsToldBeforeAnythingRuns() {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/cat")), "no /bin/cat here");
        assertEquals(3, terminal.run("run", "--device", "/bin/cat", hut));
        assertTrue(terminal.err().startsWith("the program '/bin/cat': it said 'hello 1'"));
        assertEquals("", terminal.out());
    }

    @Test
    void aScenarioWithoutACoreIsSkipped() throws Exception {
        String text = Files.readString(Path.of(hut)) + "gauge: {kind: plain-counter}\n";
        String other = Files.writeString(folder.resolve("other.yaml"), text).toString();
        String device = device(PipeCore.class);
        terminal.run("run", "--device", device, hut, other);
        assertTrue(terminal.out().contains("1 passed, 0 failed"), terminal.out());
        assertTrue(terminal.out().contains("1 skipped"), terminal.out());
        assertEquals(2, terminal.run("run", "--at", "1 h", "--device", device, other));
        assertTrue(terminal.err().contains("no gauge of kind core"), terminal.err());
    }
}
