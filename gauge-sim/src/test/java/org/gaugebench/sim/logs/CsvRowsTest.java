package org.gaugebench.sim.logs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every reader of a file that is refused whole says alike, and where. */
class CsvRowsTest {
    private static final CsvRows.Expected EXPECTED =
            new CsvRows.Expected("fewer rows", "a header such as a,b", "a file", "cells");

    @TempDir private Path folder;
    private final CsvRows rows = new CsvRows("own.csv");
    private final List<String> read = new ArrayList<>();

    private void read(String name) throws LogException {
        rows.read(folder.resolve(name), 1L << 20, EXPECTED, this::header, this::row);
    }

    private void header(CsvRecord record) {
        read.add(CsvCells.withoutMark(CsvCells.cell(record, 0)));
    }

    private boolean row(CsvRecord record) {
        String cell = CsvCells.cell(record, 1);
        read.add(cell);
        if (cell.equals("wrong")) {
            rows.problem(record, 1, "not that");
        }
        return !cell.equals("stop");
    }

    private String refused(String name) {
        return assertThrows(LogException.class, () -> read(name)).getMessage();
    }

    @Test
    void aFileThatIsNoTableIsRefusedWhole() throws IOException {
        assertEquals("own.csv:1:1: there is no such file; expected a file", refused("none.csv"));
        Files.writeString(folder.resolve("blank.csv"), " \n\n");
        assertEquals(
                "own.csv:1:1: the file is empty; expected a header such as a,b",
                refused("blank.csv"));
        Files.writeString(folder.resolve("large.csv"), "a,b\n".repeat(1 << 18) + "x");
        assertEquals(
                "own.csv:1:1: the file is larger than 1 MiB; expected fewer rows",
                refused("large.csv"));
        assertEquals(List.of(), read);
    }

    /** Characters count from one, a quoted cell with its quotes; the mark is no part of a name. */
    @Test
    void aProblemHasTheLineAndColumnOfItsCell() throws IOException, LogException {
        Files.writeString(
                folder.resolve("a.csv"),
                "\uFEFFtime;word\n1;right\n\"2;5\";wrong\n3;stop\n4;wrong\n");
        read("a.csv");
        assertEquals(List.of("time", "right", "wrong", "stop"), read);
        assertEquals(1, rows.problemCount());
        LogException all = assertThrows(LogException.class, rows::refuseProblems);
        assertEquals("own.csv:3:7: not that", all.getMessage());
    }
}
