package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file appears whole or not at all. */
class FreshFileTest {
    @TempDir Path folder;

    private List<Path> left() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void whatIsNotKeptLeavesNothingAndWhatStoodThereStands() throws IOException {
        Path place = Files.writeString(folder.resolve("t.csv"), "old");
        try (FreshFile file = new FreshFile(place)) {
            file.writer().write("half a r");
            file.writer().flush();
            assertEquals(2, left().size(), "it is written beside its place");
        }
        assertEquals(List.of(place), left());
        assertEquals("old", Files.readString(place));
    }

    @Test
    void whatIsKeptTakesThePlaceOfTheOld() throws IOException {
        Path place = Files.writeString(folder.resolve("t.csv"), "old");
        try (FreshFile file = new FreshFile(place)) {
            file.writer().write("new");
            file.keep();
        }
        assertEquals(List.of(place), left());
        assertEquals("new", Files.readString(place));
    }

    /** A pipe stands for every place that is no file: /dev/null would be gone for everybody. */
    @Test
    void noFileIsPutInThePlaceOfAPipe() throws Exception {
        Path pipe = folder.resolve("pipe");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        IOException e = assertThrows(IOException.class, () -> new FreshFile(pipe));
        assertTrue(e.getMessage().contains("no file"), e.getMessage());
        assertEquals(List.of(pipe), left());
    }

    @Test
    void aLinkStaysAndTheFileBehindItIsWritten() throws IOException {
        Path place = Files.writeString(folder.resolve("t.csv"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link"), place);
        try (FreshFile file = new FreshFile(link)) {
            file.writer().write("new");
            file.keep();
        }
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(place));
        Files.delete(place);
        assertThrows(IOException.class, () -> new FreshFile(link));
    }

    @Test
    void twoFilesInOnePlaceAreRefusedAndTheFirstGoesOn() throws IOException {
        Path place = folder.resolve("t.csv");
        try (FreshFile file = new FreshFile(place)) {
            file.writer().write("first");
            Path same = folder.resolve("x/../t.csv");
            IOException e = assertThrows(IOException.class, () -> new FreshFile(same));
            assertTrue(e.getMessage().contains("another file"), e.getMessage());
            file.keep();
        }
        assertEquals("first", Files.readString(place));
        new FreshFile(place).close();
        assertEquals(List.of(place), left());
    }
}
