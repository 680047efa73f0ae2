package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.live.lessons.ShelfInClasses;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheets of the lessons come into a folder, whole, in the language that was given. */
class SheetsCommandTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();

    @BeforeAll
    static void shelf() {
        ShelfInClasses.copy();
    }

    private static List<String> names(Path place) throws IOException {
        try (Stream<Path> files = Files.list(place)) {
            return files.map(it -> it.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aFolderHoldsEverySheetAndTheListOfWords() throws IOException {
        Path place = folder.resolve("for-my-class");
        assertEquals(0, terminal.run("sheets", place.toString()), terminal.err());
        List<String> names = names(place);
        assertEquals(47, names.size(), "an index, 3 plans, 3 x 14 sheets, the words");
        assertTrue(names.contains("14-day-49-answer.html"), names.toString());
        assertTrue(
                Files.readString(place.resolve("english.words"))
                        .contains("lesson-1.title = Counting is adding\n"));
        assertEquals("47 files in " + place + "; begin with index.html\n", terminal.out());
        assertEquals("", terminal.err());
    }

    @Test
    void aTranslationIsUsedAndWhatItLacksIsListed() throws IOException {
        Path words = folder.resolve("deutsch.words");
        Files.writeString(words, "language = de\nsheet.pupil = Blatt für Schüler\n");
        assertEquals(
                0,
                terminal.run("sheets", "--words", words.toString(), folder.toString()),
                terminal.err());
        String sheet = Files.readString(folder.resolve("01-counting-is-adding-pupil.html"));
        assertTrue(sheet.contains("<html lang=\"de\""));
        assertTrue(sheet.contains("Blatt für Schüler"));
        assertTrue(terminal.err().contains("texts stay English: safety, "), terminal.err());
    }

    @Test
    void aWrongFileOrPlaceIsToldAndNothingIsWritten() throws IOException {
        Path words = folder.resolve("deutsch.words");
        Files.writeString(words, "sheet.pupel = x\n");
        Path place = folder.resolve("out");
        assertEquals(2, terminal.run("sheets", "--words", words.toString(), place.toString()));
        assertTrue(
                terminal.err()
                        .contains(
                                words
                                        + ":1:1: there is no key 'sheet.pupel'; did you mean"
                                        + " 'sheet.pupil'?"),
                terminal.err());
        assertFalse(Files.exists(place));
        assertEquals(2, terminal.run("sheets", words.toString()));
        assertTrue(terminal.err().contains("it is a file"), terminal.err());
        assertEquals(2, terminal.run("sheets", folder.resolve("no/such").toString()));
        assertTrue(terminal.err().contains("no such folder"), terminal.err());
        assertEquals(List.of("deutsch.words"), names(folder));
    }
}
