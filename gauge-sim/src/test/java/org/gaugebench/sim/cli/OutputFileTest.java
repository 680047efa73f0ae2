package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names of files that people open end in the same way with every command. */
class OutputFileTest {
    private static final List<String> SYSTEM =
            List.of(
                    "--voltage=12 V",
                    "--chemistry=lifepo4",
                    "--capacity=100 Ah",
                    "--load=lamp: 1 A, 5 h",
                    "--charger=10 A");

    @TempDir private Path folder;
    private CommandFolder bench;

    @BeforeEach
    void write() {
        bench = new StudyBench(folder);
        bench.write("hut.yaml", Samples.hut());
        bench.write("part.rows", "no rows yet\n");
    }

    private int run(String command, boolean isOfASystem) {
        List<String> words = new ArrayList<>(List.of(command.split(" ", -1)));
        if (isOfASystem) {
            words.addAll(SYSTEM);
        }
        return bench.run(words.toArray(new String[0]));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "run @hut.yaml --picture | a picture in SVG | .svg",
                "run @hut.yaml --report | a page in HTML | .html",
                "run @hut.yaml --dump | a value change dump | .vcd",
                "study @hours.study --picture | a picture in SVG | .svg",
                "study @hours.study --report | a page in HTML | .html",
                "study merge @hours.study @part.rows --picture | a picture in SVG | .svg",
                "study merge @hours.study @part.rows --report | a page in HTML | .html",
                "tune @hut.yaml --picture | a picture in SVG | .svg",
                "covers @hut.yaml --html | a page in HTML | .html",
                "size --picture | a picture in SVG | .svg",
                "ahead --picture | a picture in SVG | .svg",
                "handover | a page in HTML | .html",
            })
    void whatPeopleOpenIsCalledWhatItIs(String command, String what, String ending) {
        List<String> before = bench.files();
        boolean isOfASystem = !command.contains("@");
        for (String name : List.of("a.txt", "a.yaml", "a", ".svg.bak", "a.html.vcd.csv")) {
            assertEquals(2, run(command + " @" + name, isOfASystem), command + " " + name);
            String expected =
                    ": %s is written, and %s ends otherwise; expected a name such as "
                            .formatted(what, folder.resolve(name));
            assertTrue(bench.err().contains(expected), bench.err());
            assertTrue(bench.err().endsWith(ending + "\n"), bench.err());
            assertEquals("", bench.out());
            assertEquals(before, bench.files());
        }
    }

    @Test
    void lettersOfAnySizeAndTheShortEndingOfAPageAreTaken() {
        assertEquals(0, run("handover @A.HTM", true), bench.err());
        assertEquals(0, run("size --picture @A.Svg", true), bench.err());
        assertTrue(bench.read("A.Svg").startsWith("<"), "a picture");
        assertTrue(bench.exists("A.HTM"));
    }

    /** A program is told what to read; it does not go by the name. */
    @Test
    void whatProgramsReadIsCalledAsOneLikes() {
        String command = "run @hut.yaml --trace @trace --junit @verdicts.txt";
        assertEquals(0, run(command, false), bench.err());
        assertTrue(bench.exists("trace") && bench.exists("verdicts.txt"));
    }
}
