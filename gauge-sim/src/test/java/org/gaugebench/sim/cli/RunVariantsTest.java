package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One file, several runs: every report says which of them it speaks of. */
class RunVariantsTest {
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
}
