package org.gaugebench.sim.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever a program does, the run ends soon, says why, and leaves nothing running. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class HostileProgramsTest {
    private static final Scenario HUT =
            Samples.read(Samples.expecting("at: 1 h, reading: voltage, at-least: 1 V"));

    /** A JVM on a busy machine needs some of it to start. */
    private static final long ANSWER_MILLIS = 4_000;

    private static PipeFailure failure(PipeCommand command) {
        return assertThrows(
                PipeFailure.class, () -> RunRecorder.run(HUT, 1, Observer.NONE, command));
    }

    private static String told(PipeFailure failure) {
        return failure.getMessage() + "\n" + String.join("\n", failure.details());
    }

    private static void assertNothingRuns(PipeCommand command) {
        String name = command.words().get(command.words().size() - 1);
        List<String> left =
                ProcessHandle.current()
                        .descendants()
                        .map(it -> it.info().commandLine().orElse(""))
                        .filter(it -> it.endsWith(name))
                        .toList();
        assertEquals(List.of(), left);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "silence           | it did not answer within 4.0 s",
                "dies              | it ended with exit code 3",
                "dies-half-way     | it ended with exit code 3",
                "garbage           | or 'erase 2'; text for people goes to standard error",
                "short-line        | expected 2 figures, found 1",
                "long-line         | there is more behind the readout than belongs to it",
                "no-number         | there is more behind the readout than belongs to it",
                "too-large         | expected a whole number at column 16",
                "out-of-its-field  | its readout has 2147483648 for current; expected",
                "wrong-word        | its hello promised no registers",
                "wrong-place       | its 'event' is of tick 3 of the message; expected 0 to 0",
                "endless-line      | it wrote a line of more than 16384 bytes",
                "endless-events    | it sent more than 100000 messages before its answer",
                "closes-its-output | it closed its standard output",
            })
    void goesWrongInTheMiddle(String wrong, String reason) {
        PipeCommand command = JavaProgram.of(ANSWER_MILLIS, HostileProgram.class, wrong);
        PipeFailure failure = failure(command);
        assertTrue(told(failure).contains(reason), told(failure));
        assertTrue(told(failure).contains("'HostileProgram' (hostile)"), told(failure));
        assertTrue(told(failure).contains("ticks that it was given: 100"), told(failure));
        assertTrue(told(failure).contains("asked: tick "), told(failure));
        boolean isQuoted = told(failure).contains(": it answered ");
        assertFalse(isQuoted && told(failure).contains("answered: nothing"), told(failure));
        assertTrue(told(failure).contains("last words of " + wrong), told(failure));
        assertTrue(failure.details().get(0).startsWith("simulated time: 0 d 00:0"), told(failure));
        assertNothingRuns(command);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "no-hello             | it did not answer within 4.0 s",
                "half-a-frame         | it did not answer within 4.0 s",
                "swapped-frame        | it would be one: frames are little-endian",
                "floods               | it wrote more than it was asked for, or before it was",
                "answers-early        | it wrote more than it was asked for, or before it was",
                "closes-its-input     | it closed its standard input",
                "does-not-end         | it did not end within 4.0 s",
                "says-more-at-the-end | it wrote more than it was asked for",
                "ends-badly           | it ended with exit code 9",
            })
    void goesWrongElsewhere(String wrong, String reason) {
        PipeCommand command = JavaProgram.of(ANSWER_MILLIS, HostileProgram.class, wrong);
        PipeFailure failure = failure(command);
        assertTrue(told(failure).contains(reason), told(failure));
        assertNothingRuns(command);
    }

    @Test
    void halfAFrameIsToldAsWhatItIs() {
        PipeCommand command = JavaProgram.of(ANSWER_MILLIS, HostileProgram.class, "half-a-frame");
        String told = told(failure(command));
        assertTrue(told.contains("3 bytes of an unfinished frame"), told);
    }

    @Test
    void theSameProgramThatDoesNothingWrongRunsToItsEnd() {
        PipeCommand command = JavaProgram.of(HostileProgram.class, "nothing");
        assertEquals("hostile", RunRecorder.run(HUT, 1, Observer.NONE, command).program().name());
        assertNothingRuns(command);
    }

    /** The child outlives its parent and holds the pipe open: nobody's descendant any more. */
    @Test
    void aChildThatHoldsThePipeIsEndedThoughItsParentIsGone(@TempDir Path folder) throws Exception {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here");
        Assumptions.assumeTrue(Files.isReadable(Path.of("/proc/self/environ")), "no /proc here");
        Path number = folder.resolve("number");
        String script =
                "echo 'hello 1 parent'; echo 'readout current'; echo ready;"
                        + " sleep 600 & echo $! > "
                        + number
                        + "; exit 0";
        PipeCommand command =
                new PipeCommand("parent", List.of("/bin/sh", "-c", script), ANSWER_MILLIS);
        long start = System.nanoTime();
        String told = told(failure(command));
        long seconds = (System.nanoTime() - start) / 1_000_000_000;
        assertTrue(told.contains("it ended with exit code 0"), told);
        assertTrue(seconds < 3, seconds + " s, though the program was gone at once");
        long child = Long.parseLong(Files.readString(number).strip());
        boolean isAlive =
                ProcessHandle.of(child).map(HostileProgramsTest::isReallyAlive).orElse(false);
        assertFalse(isAlive, "the child still runs");
    }

    /** Not one that is dead and waits for somebody to ask. */
    private static boolean isReallyAlive(ProcessHandle it) {
        try {
            it.onExit().get(2, TimeUnit.SECONDS);
            return false;
        } catch (Exception e) {
            return it.isAlive() && it.info().command().isPresent();
        }
    }

    @Test
    void aProgramThatNeverReadsDoesNotBlockUs() {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here");
        // It answers without reading, so that what we write piles up in the pipe.
        String script =
                "echo 'hello 1 deaf'; echo 'readout current'; echo ready; sleep 0.2; echo 'readout"
                        + " 1'; sleep 600";
        PipeCommand command = new PipeCommand("deaf", List.of("/bin/sh", "-c", script), 1_000);
        String told = told(failure(command));
        assertTrue(
                told.contains("it did not answer within 1.0 s")
                        || told.contains("it wrote more than it was asked for"),
                told);
    }

    @Test
    void somebodyWhoStopsWaitingLeavesNothingBehind() throws Exception {
        PipeCommand command = JavaProgram.of(60_000, HostileProgram.class, "silence");
        Thread run =
                new Thread(
                        () -> {
                            try {
                                RunRecorder.run(HUT, 1, Observer.NONE, command);
                            } catch (PipeFailure e) {
                                // as meant
                            }
                        });
        run.start();
        Thread.sleep(2_000);
        run.interrupt();
        run.join(10_000);
        assertFalse(run.isAlive(), "it still waits");
        assertNothingRuns(command);
    }
}
