package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/** Reads what an owner wrote down: a header row, then one note a row. */
public final class NotesReader {
    private static final String EXAMPLE = "time,shown,word, then 2026-05-03T07:00,82,nothing";
    private static final List<String> NAMES =
            List.of("time", "shown", "ah", "charged", "volts", "word");
    private static final CsvRows.Expected EXPECTED =
            new CsvRows.Expected(
                    "notes such as " + EXAMPLE, EXAMPLE, "notes such as " + EXAMPLE, "");
    private static final long MOST_BYTES = 4L << 20;
    private static final int MOST_ROWS = 10_000;
    private static final int MOST_PROBLEMS = 20;
    private static final double LEAST_HOURS = 12;
    private static final int LEAST_NOTES = 4;

    private final CsvRows rows;
    private final List<OwnersNote> notes = new ArrayList<>();
    private final int[] places = {-1, -1, -1, -1, -1, -1};
    private final NumberCells numbers = new NumberCells();
    private final TimeCells times = new TimeCells(numbers, ZoneOffset.UTC);
    private int rowCount;
    private double origin = Double.NaN;

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
        rows.read(path, MOST_BYTES, EXPECTED, this::header, this::row);
        boolean few =
                notes.size() < LEAST_NOTES || notes.get(notes.size() - 1).hours() < LEAST_HOURS;
        if (rows.problemCount() == 0 && few) {
            throw rows.refusal(
                    notes.size()
                            + (notes.size() == 1 ? " note says" : " notes say")
                            + " too little; expected four or more, over 12 h or longer");
        }
        rows.refuseProblems();
        return List.copyOf(notes);
    }

    private boolean row(CsvRecord record) {
        if (rowCount++ == MOST_ROWS || rows.problemCount() >= MOST_PROBLEMS) {
            rows.problem(record, 0, "reading stopped; expected at most 10000 notes");
            return false;
        }
        note(record);
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

    private void note(CsvRecord record) {
        int before = rows.problemCount();
        double hours = time(record);
        Double percent = number(record, 1, -1_000, 1_000, "a percent such as 82");
        Double shown = number(record, 2, -100_000, 100_000, "amp-hours shown, such as 65.2");
        Double charged = number(record, 3, 0, 100_000, "amp-hours put in, such as 24");
        Double volts = number(record, 4, 0, 1_000, "volts such as 12.7");
        OwnersNote.Word word = word(record);
        if (percent == null && rows.problemCount() == before) {
            rows.problem(record, places[1], "the cell is empty; expected a percent such as 82");
        }
        if (percent != null && rows.problemCount() == before) {
            notes.add(new OwnersNote(hours, percent, shown, charged, volts, word));
        }
    }

    private double time(CsvRecord record) {
        try {
            // A number counts hours, not seconds.
            String cell = CsvCells.cell(record, places[0]);
            long nanos = times.nanos(cell, Math.toIntExact(record.getStartingLineNumber()));
            double hours = nanos / (times.hasDates() ? 3.6e12 : 1e9);
            if (Double.isNaN(origin)) {
                origin = hours;
            }
            double since = hours - origin;
            if (!notes.isEmpty() && since <= notes.get(notes.size() - 1).hours()) {
                rows.problem(
                        record,
                        places[0],
                        "'"
                                + cell
                                + "' is not later than the note before;"
                                + " expected notes in order of time");
            }
            return since;
        } catch (CellException e) {
            rows.problem(
                    record,
                    places[0],
                    e.getMessage() + "; expected for instance 2026-05-03T07:00, or hours: 7.5");
            return 0;
        }
    }

    private @Nullable Double number(
            CsvRecord record, int which, double least, double most, String expected) {
        String cell = CsvCells.cell(record, places[which]);
        if (cell.isEmpty()) {
            return null;
        }
        try {
            double value = numbers.nearest(cell);
            if (value >= least && value <= most) {
                return value;
            }
            rows.problem(record, places[which], "'" + cell + "' cannot be; expected " + expected);
        } catch (CellException e) {
            rows.problem(record, places[which], e.getMessage() + "; expected " + expected);
        }
        return null;
    }

    private OwnersNote.@Nullable Word word(CsvRecord record) {
        String cell = CsvCells.cell(record, places[5]);
        if (cell.isEmpty()) {
            return null;
        }
        List<String> keys = new ArrayList<>();
        for (OwnersNote.Word each : OwnersNote.Word.values()) {
            if (each.key().equals(cell)) {
                return each;
            }
            keys.add(each.key());
        }
        rows.problem(
                record,
                places[5],
                "'%s' is no word known here; expected one of %s, or an empty cell"
                        .formatted(Texts.shortened(cell), String.join(", ", keys)));
        return null;
    }
}
