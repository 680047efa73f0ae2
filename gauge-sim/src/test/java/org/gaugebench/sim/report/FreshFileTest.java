package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
}
