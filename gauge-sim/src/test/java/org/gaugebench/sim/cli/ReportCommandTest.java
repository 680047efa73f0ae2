package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a run on the command line: it appears whole or not at all, and changes nothing. */
class ReportCommandTest {
    @TempDir Path folder;
    private Path hut;
    private String html = "";

    @BeforeEach
    void writeScenario() throws IOException {
        hut = Files.writeString(folder.resolve("hut.yaml"), Samples.hut());
        html = folder.resolve("day.html").toString();
    }

    @Test
    void aReportChangesNothingOfTheRun() throws IOException {
        FakeTerminal with = new FakeTerminal();
        assertEquals(0, with.run("run", "--report", html, hut.toString()), with.err());
        FakeTerminal plain = new FakeTerminal();
        assertEquals(0, plain.run("run", hut.toString()));
        assertEquals(plain.out(), with.out());
        String digest = with.out().replaceAll("(?s).*digest +(\\w+).*", "$1");
        String page = Files.readString(Path.of(html));
        assertTrue(page.contains("data-origin=\"digest\">" + digest + "<"), digest);
        assertTrue(page.endsWith("</html>\n"));
    }

    @Test
    void aRunThatFailsHasAReportToo() throws IOException {
        Files.writeString(
                hut, Samples.expecting("at: 1 d, reading: state-of-charge, at-least: 90 %"));
        FakeTerminal terminal = new FakeTerminal();
        String svg = folder.resolve("day.svg").toString();
        String csv = folder.resolve("day.csv").toString();
        String[] args = {"run", "--report", html, "--picture", svg, "--trace", csv, hut.toString()};
        assertEquals(1, terminal.run(args), terminal.err());
        String page = Files.readString(Path.of(html));
        assertTrue(page.contains("<strong class=\"failed\">FAILED</strong>: 0 of 1"), "verdict");
        assertTrue(Files.size(Path.of(svg)) > 1_000 && Files.size(Path.of(csv)) > 1_000);
    }

    /** One run of the twins serves the text and the page; the text is that of the option alone. */
    @Test
    void theCausesInThePageChangeNothingOfTheText() throws IOException {
        FakeTerminal with = new FakeTerminal();
        String[] args = {"run", "--attribution", "--report", html, hut.toString()};
        assertEquals(0, with.run(args), with.err());
        FakeTerminal plain = new FakeTerminal();
        assertEquals(0, plain.run("run", "--attribution", hut.toString()));
        assertEquals(plain.out(), with.out());
        assertTrue(Files.readString(Path.of(html)).contains("data-chart=\"attribution\""));
    }
}
