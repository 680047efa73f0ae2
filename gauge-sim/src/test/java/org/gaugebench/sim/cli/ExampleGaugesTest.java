package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example programs of the pages speak the protocol, and the shelf says what they lack. */
class ExampleGaugesTest {
    private static final Path EXAMPLES = Path.of("docs", "examples").toAbsolutePath();
    private static final Path PAGE = Path.of("docs", "testing-your-gauge.md");

    private static boolean runs(String... command) {
        try {
            Process process =
                    new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start();
            return process.waitFor(1, TimeUnit.MINUTES) && process.exitValue() == 0;
        } catch (Exception e) {
            return false;
        }
    }

    @Test
    void theToyInPythonIsFoundOutByTheFirstStepsAndTheLessons() throws Exception {
        Assumptions.assumeTrue(runs("python3", "--version"), "no python3 here");
        FakeTerminal terminal = new FakeTerminal();
        Path shelf = FakeTerminal.scenarios();
        terminal.run(
                "run",
                "--device",
                "python3 '" + EXAMPLES.resolve("toy_gauge.py") + "'",
                shelf.resolve("first-steps").toString(),
                shelf.resolve("teaching").toString());
        String out = terminal.out();
        int table = out.lastIndexOf("worst first");
        assertTrue(table >= 0, terminal.err() + out);
        // The folder's place on this machine is not the page's.
        String shown = out.substring(table).replaceFirst("scenario in .*", "scenario");
        PageSection.check(PAGE, "toy", "```text\n" + shown + "```\n");
    }

    @Test
    void theCounterInCGivesTheSameReportInFramesAndInLines(@TempDir Path folder) {
        Path built = folder.resolve("frame-gauge");
        String source = EXAMPLES.resolve("frame_gauge.c").toString();
        Assumptions.assumeTrue(
                runs("cc", "-O2", "-Wall", "-Werror", "-o", built.toString(), source),
                "no C compiler here");
        String scenario =
                FakeTerminal.scenarios().resolve("first-steps/a-week-in-the-hut.yaml").toString();
        FakeTerminal frames = new FakeTerminal();
        assertEquals(1, frames.run("run", "--device", "'" + built + "'", scenario));
        FakeTerminal lines = new FakeTerminal();
        assertEquals(1, lines.run("run", "--device", "'" + built + "' text", scenario));
        assertEquals(plain(frames.out(), built), plain(lines.out(), built));
        assertTrue(frames.out().contains("frame-gauge"), frames.out());
    }

    /** Without what tells the two commands apart. */
    private static String plain(String out, Path built) {
        return out.replaceAll("[\\s\\\\]+", " ").replace(built + "' text", built + "'");
    }
}
