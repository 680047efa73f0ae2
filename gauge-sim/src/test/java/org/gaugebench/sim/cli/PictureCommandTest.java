package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.report.SvgLabels;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The picture on the command line: it appears whole or not at all, and changes nothing. */
class PictureCommandTest {
    @TempDir Path folder;
    private Path hut;
    private String svg = "";

    @BeforeEach
    void writeScenario() throws IOException {
        hut = Files.writeString(folder.resolve("hut.yaml"), Samples.hut());
        svg = folder.resolve("day.svg").toString();
    }

    @Test
    void aPictureChangesNothingOfTheRun() throws IOException {
        FakeTerminal drawn = new FakeTerminal();
        assertEquals(0, drawn.run("run", "--picture", svg, hut.toString()), drawn.err());
        FakeTerminal plain = new FakeTerminal();
        assertEquals(0, plain.run("run", hut.toString()));
        assertEquals(plain.out(), drawn.out());
        String text = Files.readString(Path.of(svg));
        SvgLabels.parse(text);
        assertTrue(text.contains(">voltage, V<"), text);
    }

    @Test
    void shouldShowWhatWasAskedFor() throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        String[] args = {
            "run", "--picture", svg, "--picture-shows", "error,temperature", hut.toString()
        };
        assertEquals(0, terminal.run(args), terminal.err());
        String text = Files.readString(Path.of(svg));
        int error = text.indexOf(">error of the state of charge");
        assertTrue(error > 0 && error < text.indexOf(">temperature, "), text);
        assertTrue(!text.contains(">voltage, V<"), text);
    }

    @Test
    void shouldDrawBesideATraceAndOfARunThatFails() throws IOException {
        Files.writeString(
                hut, Samples.expecting("at: 1 d, reading: state-of-charge, at-least: 90 %"));
        Path csv = folder.resolve("t.csv");
        FakeTerminal terminal = new FakeTerminal();
        String[] args = {"run", "--picture", svg, "--trace", csv.toString(), hut.toString()};
        assertEquals(1, terminal.run(args), terminal.err());
        assertTrue(Files.size(Path.of(svg)) > 1_000);
        assertEquals(1 + 1 + 24 * 60, Files.readAllLines(csv).size());
    }

    @Test
    void shouldDrawTheVariantThatWasChosen() throws IOException {
        Files.writeString(hut, Samples.hut() + "vary:\n  loads.lamp.current: [1 A, 2 A]\n");
        FakeTerminal terminal = new FakeTerminal();
        String name = "loads.lamp.current=2 A";
        String[] args = {"run", "--picture", svg, "--variant", name, hut.toString()};
        assertEquals(0, terminal.run(args), terminal.err());
        String text = Files.readString(Path.of(svg));
        assertTrue(text.contains(">A day at the pier [" + name + "]<"), text);
        assertEquals(List.of(), SvgLabels.troubles(text));
    }
}
