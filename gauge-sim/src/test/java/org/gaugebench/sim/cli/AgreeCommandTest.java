package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.device.PipeCore;
import org.gaugebench.sim.device.PlantedCore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code agree} says and writes. */
class AgreeCommandTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();

    @Test
    void withoutAProgramThereIsNothingToHoldAgainstTheCore() {
        assertEquals(2, terminal.run("agree"));
        assertTrue(terminal.err().contains("--device is missing"), terminal.err());
        assertEquals("", terminal.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--ticks=0", "--ticks=-1", "--first=-1", "--threads=0", "--seed=one"})
    void aNumberThatCannotBeIsRefused(String option) {
        String program =
                CompareDeviceTest.command(PipeCore.class, "form frames", "restart message");
        assertEquals(2, terminal.run("agree", "--device", program, option));
        assertTrue(terminal.err().contains(option.split("=", -1)[0]), terminal.err());
        assertEquals("", terminal.out());
    }

    @Test
    void aDifferenceIsToldAndItsVectorsHoldForTheCore() {
        String planted =
                CompareDeviceTest.command(
                        PlantedCore.class,
                        "over",
                        "0",
                        "form frames",
                        "batch 1024",
                        "restart message");
        Path vectors = folder.resolve("v");
        int code =
                terminal.run(
                        "agree",
                        "--device",
                        planted,
                        "--ticks=20000",
                        "--threads=1",
                        "--vectors",
                        vectors.toString());
        assertEquals(1, code, terminal.err());
        assertTrue(terminal.out().startsWith("DIFFER: in sequence 0 of seed 1"), terminal.out());
        assertTrue(terminal.out().contains("\n* shunt-counts "), terminal.out());
        assertTrue(terminal.out().endsWith(" rows that show it\n"), terminal.out());
        assertTrue(Files.exists(vectors.resolve("vectors.csv")));
        FakeTerminal check = new FakeTerminal();
        assertEquals(0, check.run("vectors", "--check", vectors.toString()), check.err());
    }
}
