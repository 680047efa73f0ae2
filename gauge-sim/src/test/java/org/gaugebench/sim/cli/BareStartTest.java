package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** Who starts the program without a word, and what they get. */
class BareStartTest {
    private static final Map<String, String> DESKTOP = Map.of("DISPLAY", ":0");

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private int pages;

    /** Stands for the page: only counts that it was asked for. */
    @Command(name = "live")
    private final class Page implements Callable<Integer> {
        @Override
        public Integer call() {
            pages++;
            return 0;
        }
    }

    @Command(name = "gauge-sim")
    private static final class Program {}

    @Test
    void aDoubleClickOpensThePage() {
        assertEquals(0, answer(false, false, DESKTOP));
        assertEquals(1, pages);
        assertEquals("", out.toString(StandardCharsets.UTF_8));
    }

    @Test
    void aTerminalGetsAFewLinesAndNoPage() {
        assertEquals(0, answer(true, true, DESKTOP));
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.startsWith("gauge-sim live "), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
        assertEquals(0, pages);
    }

    @Test
    void aPersonWhoKeepsTheOutputInAFileGetsNoPage() {
        assertEquals(0, answer(true, false, DESKTOP));
        assertEquals(0, pages);
    }

    @Test
    void aScriptWithoutADesktopIsAskedForACommand() {
        assertThrows(ParameterException.class, () -> answer(false, false, Map.of()));
        assertEquals(0, pages);
    }

    @Test
    void aBuildServerIsAskedForACommandEvenWithADesktop() {
        Map<String, String> server = Map.of("DISPLAY", ":0", "CI", "true");
        assertThrows(ParameterException.class, () -> answer(false, false, server));
        assertEquals(0, pages);
    }

    private int answer(boolean in, boolean outIs, Map<String, String> environment) {
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        Terminal terminal =
                new Terminal(
                        stream,
                        stream,
                        outIs,
                        outIs,
                        environment,
                        InputStream.nullInputStream(),
                        in);
        CommandLine line = new CommandLine(new Program());
        line.addSubcommand(new Page());
        BrowserOpener opener = new BrowserOpener("Linux", environment, command -> true);
        return BareStart.answer(line, terminal, opener);
    }
}
