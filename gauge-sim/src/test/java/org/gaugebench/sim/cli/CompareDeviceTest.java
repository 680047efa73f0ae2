package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.device.JavaProgram;
import org.gaugebench.sim.device.PipeCore;
import org.gaugebench.sim.device.PlantedCore;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two devices in step through scenarios: the same at every tick, or parted at the right one. */
class CompareDeviceTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();

    static String command(Class<?> main, String... args) {
        return "'" + String.join("' '", JavaProgram.of(main, args).words()) + "'";
    }

    private static String shelf(String file) {
        return FakeTerminal.scenarios().resolve(file).toString();
    }

    private String hut() throws IOException {
        return Files.writeString(folder.resolve("hut.yaml"), Samples.hut()).toString();
    }

    /** Started again by message and anew, in lines and in frames: digests span other times. */
    @ParameterizedTest
    @ValueSource(strings = {"form frames/batch 256/restart message", "batch 100", "batch 1"})
    void theCoreBehindAPipeIsTheCoreAtEveryTickCutsAndFaultsIncluded(String hello) {
        int code =
                terminal.run(
                        "compare",
                        "--device",
                        command(PipeCore.class, hello.split("/", -1)),
                        shelf("edge-cases/a-cut-in-the-middle-of-a-save.yaml"),
                        shelf("edge-cases/a-memory-that-dies.yaml"),
                        shelf("edge-cases/ten-restarts-in-a-minute.yaml"));
        assertEquals(0, code, terminal.out() + terminal.err());
        List<String> lines = terminal.out().lines().toList();
        assertTrue(lines.get(0).startsWith("SAME "), lines.get(0));
        assertTrue(
                lines.get(0).endsWith("a-cut-in-the-middle-of-a-save.yaml"), "in order: " + lines);
        assertTrue(terminal.out().contains("\nAGREE: "), terminal.out());
        assertTrue(terminal.out().contains(" 0 differ, 0 broke off."), terminal.out());
    }

    @Test
    void aCountTooManyIsFoundInItsTickWithRegistersInputsAndVectors() throws IOException {
        String planted = command(PlantedCore.class, "tick", "1000", "batch 64", "form frames");
        int code =
                terminal.run(
                        "compare",
                        "--device",
                        planted,
                        "--vectors",
                        folder.resolve("v").toString(),
                        hut());
        String out = terminal.out();
        assertEquals(1, code, out + terminal.err());
        // The first sample comes with power, at time 0: the thousandth comes at 999 s.
        assertTrue(
                out.replaceAll("\\s+", " ").contains("part at 0 d 00:16:39, in tick 999: "), out);
        String[] counts =
                out.lines()
                        .filter(line -> line.startsWith("* shunt-counts "))
                        .findFirst()
                        .orElseThrow()
                        .split("\\s+", -1);
        assertEquals(Long.parseLong(counts[2]) + 1, Long.parseLong(counts[3]), out);
        assertTrue(out.contains("\n  uptime-millis "), "equal registers stand there too");
        List<String> inputs = out.lines().filter(line -> line.startsWith("  tick ")).toList();
        assertEquals(20, inputs.size(), out);
        assertTrue(inputs.get(19).startsWith("  tick " + counts[2] + " "), inputs.get(19));
        List<String> rows = Files.readAllLines(folder.resolve("v/001/vectors.csv"));
        List<String> names = List.of(rows.get(0).split(",", -1));
        List<String> last = List.of(rows.get(rows.size() - 1).split(",", -1));
        String given = last.get(names.indexOf("shunt_counts"));
        assertEquals(counts[2], given, "the vectors end with that tick");
    }

    @Test
    void twoProgramsAreHeldAgainstEachOther() throws IOException {
        String plain = command(PipeCore.class, "batch 64");
        String planted = command(PlantedCore.class, "tick", "200", "batch 64");
        assertEquals(0, terminal.run("compare", "--device", plain, "--device", plain, hut()));
        FakeTerminal other = new FakeTerminal();
        int code = other.run("compare", "--device", planted, "--device", plain, hut());
        assertEquals(1, code, other.err());
        assertTrue(other.out().contains("in tick 199:"), other.out());
    }

    @Test
    void aProgramWithoutADigestIsAskedInEveryTick() throws IOException {
        String planted = command(PlantedCore.class, "tick", "90", "batch 64", "restart message");
        String plain = command(PipeCore.class, "batch 64");
        // One lives on and the other does not: their digests span other times.
        int code = terminal.run("compare", "--device", plain, "--device", planted, hut());
        assertEquals(1, code, terminal.err());
        assertTrue(terminal.out().contains("in tick 89:"), terminal.out());
    }

    /** The same core, restarted in two ways: digests that begin elsewhere are not compared. */
    @Test
    void digestsThatSpanOtherLivesAreNotHeldAgainstEachOther() {
        String anew = command(PipeCore.class, "batch 64");
        String byMessage = command(PipeCore.class, "batch 64", "restart message");
        String cuts = shelf("edge-cases/ten-restarts-in-a-minute.yaml");
        int code = terminal.run("compare", "--device", anew, "--device", byMessage, cuts);
        assertEquals(0, code, terminal.out() + terminal.err());
    }

    /** Registers are right at every look: only the digest of the ticks between knows of it. */
    @Test
    void aDigestThatIsWrongInOneTickIsFoundThere() throws IOException {
        String planted = command(PlantedCore.class, "digest", "1000", "batch 64", "form frames");
        assertEquals(1, terminal.run("compare", "--device", planted, hut()), terminal.err());
        String out = terminal.out().replaceAll("\\s+", " ");
        assertTrue(out.contains("in tick 999: the digests of all ticks differ"), out);
    }

    /** A life that ends within its minute takes its digest with it: held as power goes off. */
    @Test
    void theDigestOfALifeIsHeldAsItsPowerGoesOff() throws IOException {
        String cut =
                Samples.hut()
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 630 s, set: {gauge.power: off}}\n"
                                        + "  - {at: 660 s, set: {gauge.power: on}");
        String file = Files.writeString(folder.resolve("cut.yaml"), cut).toString();
        String planted = command(PlantedCore.class, "digest", "620", "batch 64", "form frames");
        assertEquals(1, terminal.run("compare", "--device", planted, file), terminal.err());
        String out = terminal.out().replaceAll("\\s+", " ");
        // The next life has a 620th tick too, at 1279 s.
        assertTrue(out.contains("part at 0 d 00:10:"), out);
    }

    /** A crash is no difference: the others go on, and the message is the report of a defect. */
    @Test
    void aProgramThatBreaksOffIsToldWithItsTickAndItsLastWords() throws IOException {
        String longer = shelf("edge-cases/ten-restarts-in-a-minute.yaml");
        for (String form : List.of("form text", "form frames")) {
            String dying = command(PlantedCore.class, "die", "400", "batch 64", form);
            FakeTerminal each = new FakeTerminal();
            int code = each.run("compare", "--device", dying, hut(), longer);
            assertEquals(3, code, each.out() + each.err());
            assertTrue(each.out().contains("BROKE    " + hut() + "\n"), each.out());
            assertTrue(each.out().contains(" broke off."), each.out());
            assertTrue(each.out().contains("DIFFER: "), each.out());
            assertFalse(each.out().contains("0 broke off"), each.out());
            String err = each.err();
            assertTrue(err.contains("it ended with exit code 9"), err);
            assertTrue(err.contains("assertion failed: count is below zero"), err);
            assertTrue(err.contains("simulated time: 0 d 00:0"), err);
            assertTrue(err.contains("  asked: "), err);
            assertFalse(err.contains("Exception"), err);
        }
    }

    @Test
    void aProgramThatBreaksOffInOneScenarioLeavesTheOthersCompared() throws IOException {
        // Its ticks are counted from the start of the process, and the other run has fewer.
        String dying = command(PlantedCore.class, "die", "20000", "batch 64");
        String brief = shelf("edge-cases/ten-cuts-while-cranking.yaml");
        int code = terminal.run("compare", "--device", dying, brief, hut());
        assertEquals(3, code, terminal.out() + terminal.err());
        assertTrue(terminal.out().startsWith("SAME "), terminal.out());
        assertTrue(terminal.out().contains("1 the same, 0 differ, 1 broke off."), terminal.out());
    }

    @Test
    void whatCannotBeComparedIsRefused() throws IOException {
        assertEquals(2, terminal.run("compare", hut()));
        assertTrue(terminal.err().contains("expected two files"), terminal.err());
        FakeTerminal gone = new FakeTerminal();
        assertEquals(2, gone.run("compare", "--device", "./no-such-program", hut()));
        assertTrue(gone.err().contains("--device: the program './no-such-program'"), gone.err());
        FakeTerminal alone = new FakeTerminal();
        assertEquals(2, alone.run("compare", "--threads", "2", hut(), hut()));
        assertTrue(alone.err().contains("are for --device"), alone.err());
    }
}
