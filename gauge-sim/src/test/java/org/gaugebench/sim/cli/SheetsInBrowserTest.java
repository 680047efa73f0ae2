package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.BrowserExtension;
import org.gaugebench.sim.live.lessons.ShelfInClasses;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A pupil gets one sheet of paper, and so does the teacher for the answers. */
@ExtendWith(BrowserExtension.class)
class SheetsInBrowserTest {
    @TempDir static Path folder;

    @Test
    void eachSheetIsOnePageOnA4AndOnLetter(Browser browser) throws IOException {
        ShelfInClasses.copy();
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run("sheets", folder.toString()), terminal.err());
        List<Path> sheets;
        try (Stream<Path> files = Files.list(folder)) {
            sheets =
                    files.filter(it -> it.toString().matches(".*-(pupil|answer)\\.html"))
                            .sorted()
                            .toList();
        }
        assertEquals(28, sheets.size(), "one of each for 14 lessons");
        List<String> longer = new ArrayList<>();
        for (Path sheet : sheets) {
            browser.open(sheet);
            long onA4 = browser.sheetsOfPaper(210, 297);
            long onLetter = browser.sheetsOfPaper(215.9, 279.4);
            if (onA4 != 1 || onLetter != 1) {
                longer.add("%s: A4 %d, Letter %d".formatted(sheet.getFileName(), onA4, onLetter));
            }
        }
        assertEquals(List.of(), longer);
    }
}
