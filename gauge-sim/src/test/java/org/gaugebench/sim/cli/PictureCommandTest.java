package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
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

    private String refused(String... args) throws IOException {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(2, terminal.run(args), terminal.err());
        assertEquals("", terminal.out());
        try (Stream<Path> left = Files.list(folder)) {
            assertTrue(left.allMatch(it -> it.toString().endsWith(".yaml")), "something is left");
        }
        return terminal.err();
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
    void shouldRefuseWhatDoesNotGoTogether() throws IOException {
        String file = hut.toString();
        Path other = Files.writeString(folder.resolve("other.yaml"), Samples.hut());
        String two = refused("run", "--picture", svg, file, other.toString());
        assertTrue(two.contains("one picture shows one run; 2 were named"), two);
        String at = refused("run", "--picture", svg, "--at", "1 h", file);
        assertTrue(at.contains("a whole run and --at a moment"), at);
        String png = refused("run", "--picture", folder.resolve("day.png").toString(), file);
        assertTrue(png.contains("expected a name such as week.svg"), png);
        String alone = refused("run", "--picture-shows", "current", file);
        assertTrue(alone.contains("add --picture week.svg"), alone);
        String twice = refused("run", "--picture", svg, "--picture-shows", "error,error", file);
        assertTrue(twice.contains("stands there twice"), twice);
        String wrong = refused("run", "--picture", svg, "--picture-shows", "curent", file);
        assertTrue(wrong.contains("did you mean 'current'?"), wrong);
        String far = refused("run", "--picture", svg, "--picture-shows", "everything", file);
        assertTrue(far.contains("expected one or more of state-of-charge,charge,error"), far);
        String nowhere = refused("run", "--picture", folder.resolve("no/day.svg").toString(), file);
        assertTrue(nowhere.contains("there is no folder"), nowhere);
    }

    @Test
    void shouldDrawOneVariantAndSayHowToChooseIt() throws IOException {
        Files.writeString(hut, Samples.hut() + "vary:\n  loads.lamp.current: [1 A, 2 A]\n");
        String many = refused("run", "--picture", svg, hut.toString());
        assertTrue(many.contains("the file makes 2, choose one with --variant"), many);
        FakeTerminal terminal = new FakeTerminal();
        String name = "loads.lamp.current=2 A";
        String[] args = {"run", "--picture", svg, "--variant", name, hut.toString()};
        assertEquals(0, terminal.run(args), terminal.err());
        String text = Files.readString(Path.of(svg));
        assertTrue(text.contains(">A day at the pier [" + name + "]<"), text);
        assertEquals(List.of(), SvgLabels.troubles(text));
    }
}
