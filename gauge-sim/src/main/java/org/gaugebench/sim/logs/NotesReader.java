package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.units.Texts;

/** Reads what an owner wrote down: a header row, then one note a row. */
public final class NotesReader {
    private static final String EXAMPLE = "time,shown,word, then 2026-05-03T07:00,82,nothing";
    private static final List<String> NAMES =
            Arrays.stream(NoteCells.Part.values()).map(NoteCells.Part::key).toList();
    private static final CsvRows.Expected EXPECTED =
            new CsvRows.Expected(
                    "notes such as " + EXAMPLE, EXAMPLE, "notes such as " + EXAMPLE, "");
    private static final long MOST_BYTES = 4L << 20;
    private static final int MOST_ROWS = 10_000;
    private static final int MOST_PROBLEMS = 20;

    private final CsvRows rows;
    private final int[] places = {-1, -1, -1, -1, -1, -1};
    private int rowCount;

    private NotesReader(String file) {
        rows = new CsvRows(file);
    }

    /**
     * Reads a file.
     *
     * @param path a file
     * @param shown its name in messages
     * @return at least four notes, in order of time
     * @throws LogException with every problem found
     */
    public static List<OwnersNote> read(Path path, String shown) throws LogException {
        return new NotesReader(shown).read(path);
    }

    private List<OwnersNote> read(Path path) throws LogException {
        CsvRecord[] current = new CsvRecord[1];
        NoteCells cells =
                new NoteCells(
                        (part, message) ->
                                rows.problem(current[0], places[part.ordinal()], message));
        rows.read(
                path,
                MOST_BYTES,
                EXPECTED,
                this::header,
                record -> {
                    current[0] = record;
                    return row(record, cells);
                });
        String few = NoteCells.tooFew(cells.notes());
        if (rows.problemCount() == 0 && few != null) {
            throw rows.refusal(few);
        }
        rows.refuseProblems();
        return cells.notes();
    }

    private boolean row(CsvRecord record, NoteCells cells) {
        if (rowCount++ == MOST_ROWS || rows.problemCount() >= MOST_PROBLEMS) {
            rows.problem(record, 0, "reading stopped; expected at most 10000 notes");
            return false;
        }
        cells.read(part -> CsvCells.cell(record, places[part.ordinal()]));
        return true;
    }

    private void header(CsvRecord record) throws LogException {
        for (int i = 0; i < record.getFieldCount(); i++) {
            String name = CsvCells.withoutMark(CsvCells.cell(record, i)).toLowerCase(Locale.ROOT);
            int place = NAMES.indexOf(name);
            if (place < 0) {
                rows.problem(
                        record,
                        i,
                        "no such column '%s'; expected some of %s"
                                .formatted(Texts.shortened(name), String.join(", ", NAMES)));
            } else if (places[place] >= 0) {
                rows.problem(record, i, "column '" + name + "' is there twice; expected it once");
            } else {
                places[place] = i;
            }
        }
        for (int i = 0; i < 2; i++) {
            if (places[i] < 0) {
                rows.problem(record, 0, "no column '" + NAMES.get(i) + "'; expected " + EXAMPLE);
            }
        }
        // Without these every row would say the same once more.
        rows.refuseProblems();
    }
}
