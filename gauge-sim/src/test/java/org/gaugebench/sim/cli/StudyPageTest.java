package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a study says what the text says, and needs nothing else. */
class StudyPageTest {
    @TempDir private Path folder;
    private StudyBench bench;

    @BeforeEach
    void writeStudy() {
        bench = new StudyBench(folder);
    }

    private String page(String... words) {
        int code = bench.run(words);
        assertTrue(code == ExitCodes.OK || code == ExitCodes.FAILED, bench.err());
        return bench.read("study.html");
    }

    @Test
    void thePageHasTheFiguresOfTheText() {
        String page = page("study", "--report", "@study.html", "@hours.study");
        String text = bench.flat();
        assertTrue(page.startsWith("<!DOCTYPE html>"));
        for (String figure :
                text.replaceFirst(".*95 % limits, lower", "")
                        .replaceFirst("95 % limits, upper.*", "")
                        .strip()
                        .split(" %", -1)) {
            if (!figure.isBlank()) {
                assertTrue(
                        page.contains("<td class=\"figure\">" + figure.strip() + " %</td>"),
                        figure);
            }
        }
        String worst = text.replaceFirst(".*worst device: number (\\d+),.*", "$1");
        assertTrue(page.contains("--device " + worst + " &gt; device.yaml"), worst);
        assertTrue(page.contains("sensor.shunt-error"));
        assertTrue(page.contains("noise and weather"));
        assertTrue(page.matches("(?s).*known to [0-9.]+ %.*"), page);
        boolean warned = text.contains("First-order limits are not to be used here");
        assertEquals(warned, page.contains("First-order limits are not to be used here"));
    }

    @Test
    void thePageHoldsNoScriptAndNamesNoOtherPlace() {
        String page = page("study", "--report", "@study.html", "@hours.study");
        assertTrue(page.contains("default-src 'none'"));
        assertFalse(page.contains("<script"));
        assertFalse(page.matches("(?s).*(src|href)=\"(?!#)[^\"]*\".*"), "a link that leads away");
        assertFalse(page.contains("style=\""), "the policy would refuse it");
    }

    @Test
    void wordsOfAUserEndNoElement() {
        bench.write(
                "hours.study",
                StudyBench.STUDY.replace("What do some hours do?", "'</title><b>& \"so\" on'"));
        String page = page("study", "--report", "@study.html", "@hours.study");
        assertTrue(page.contains("<h1>&lt;/title&gt;&lt;b&gt;&amp; &quot;so&quot; on</h1>"));
        assertFalse(page.contains("<b>"));
    }

    @Test
    void casesThatVaryStandInATableThatLeadsToThem() {
        bench.write("hours.study", StudyBench.STUDY + "vary: {loads.logger.current: [1 A, 2 A]}\n");
        String page = page("study", "--report", "@study.html", "@hours.study");
        assertTrue(page.contains("<a href=\"#case-2\">loads.logger.current=2 A</a>"), page);
        assertTrue(page.contains("id=\"case-2\""));
        assertTrue(page.contains("--variant &#39;loads.logger.current=2 A&#39;"));
    }

    @Test
    void shardsAndThreadsGiveTheSamePage() {
        String whole = page("study", "--threads", "1", "--report", "@study.html", "@hours.study");
        for (int i = 1; i <= 2; i++) {
            String rows = "@" + i + ".rows";
            assertEquals(
                    0, bench.run("study", "--shard", i + "/2", "--rows", rows, "@hours.study"));
        }
        String merged =
                page(
                        "study",
                        "merge",
                        "--report",
                        "@study.html",
                        "@hours.study",
                        "@1.rows",
                        "@2.rows");
        assertEquals(whole, merged);
    }

    @Test
    void aPlaceThatCannotBeWrittenIsRefusedBeforeTheWork() {
        int code = bench.run("study", "--report", "@no/where.html", "@hours.study");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        assertTrue(bench.err().contains("--report: cannot write"), bench.err());
        assertTrue(bench.err().contains("such as study.html"), bench.err());
        assertEquals("", bench.out());
        assertEquals(
                ExitCodes.WRONG_INPUT,
                bench.run(
                        "study",
                        "--shard",
                        "1/2",
                        "--rows",
                        "@r",
                        "--report",
                        "@study.html",
                        "@hours.study"));
        assertFalse(bench.exists("study.html"));
    }

    /** A page holds a copy of the style sheet and figures of one day; a command never grows old. */
    @Test
    void theDocumentsGiveTheCommandOfAnExampleAndNotItsPage() throws IOException {
        Path docs = Path.of("docs");
        try (Stream<Path> files = Files.walk(docs)) {
            assertEquals(List.of(), files.filter(it -> it.toString().endsWith(".html")).toList());
        }
        String study = "scenarios/tolerance/one-shunt-or-the-next.study";
        String command = "gauge-sim study --report study.html " + study;
        assertTrue(Files.readString(docs.resolve("studies.md")).contains(command + "\n"));
        assertTrue(Files.exists(FakeTerminal.scenarios().resolveSibling(study)));
    }
}
