package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a run that a page or a picture is to show refuses: before it begins, leaving no file. */
class ShownRunRefusalsTest {
    @TempDir private Path folder;

    /** Words of the command, then what it says of them, parts of it with three dots between. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            textBlock =
"""
--report, @d.html, @hut, @other                      | one page shows one run; 2 were named
--picture, @d.svg, @hut, @other                      | one picture shows one run; 2 were named
--report, @d.html, --seeds, 1..3, @hut               | choose one with --variant, such as 'seed=3'
--picture, @d.svg, --seeds, 1..3, @hut               | choose one with --variant, such as 'seed=3'
--report, @d.html, @two                              | the file makes 2, choose one with --variant
--picture, @d.svg, @two                              | the file makes 2, choose one with --variant
--report, @d.html, --at, 1 h, @hut                   | --at a moment of it; ask for one of them
--picture, @d.svg, --at, 1 h, @hut                   | a whole run and --at a moment
--report, d.txt, @hut                                | d.txt ends otherwise; ... such as week.html
--picture, @d.png, @hut                              | expected a name such as week.svg
--report, @no/d.html, @hut                           | --report: cannot write ... such as week.html
--picture, @no/d.svg, @hut                           | there is no folder
--picture-shows, current, @hut                       | add --picture week.svg
--picture, @d.svg, --picture-shows, error,error, @hut | stands there twice
--picture, @d.svg, --picture-shows, curent, @hut     | did you mean 'current'?
--picture, @d.svg, --picture-shows, everything, @hut | one or more of state-of-charge,charge,error
""")
    void shouldRefuse(String words, String message) {
        CommandFolder files = new CommandFolder(folder);
        files.write("hut", Samples.hut());
        files.write("other", Samples.hut());
        files.write("two", Samples.hut() + "vary:\n  loads.lamp.current: [1 A, 2 A]\n");
        List<String> before = files.files();
        List<String> all = new ArrayList<>(List.of("run"));
        all.addAll(List.of(words.split(", ", -1)));
        int code = files.run(all.toArray(new String[0]));
        assertEquals(ExitCodes.WRONG_INPUT, code, files.err());
        assertEquals("", files.out());
        assertEquals(before, files.files(), "something is left");
        for (String part : message.split(" \\.\\.\\. ", -1)) {
            assertTrue(files.err().contains(part), files.err());
        }
    }
}
