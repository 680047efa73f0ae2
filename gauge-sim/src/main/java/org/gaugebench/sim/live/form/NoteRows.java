package org.gaugebench.sim.live.form;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.sim.logs.NoteCells;
import org.gaugebench.sim.logs.OwnersNote;

/** Reads the rows of notes as the command line reads a file of them. */
final class NoteRows {
    /** What stands beside a field may be typed in it too. */
    private static final Map<NoteCells.Part, String> UNITS =
            Map.of(
                    NoteCells.Part.SHOWN, "%",
                    NoteCells.Part.AH, "Ah",
                    NoteCells.Part.CHARGED, "Ah",
                    NoteCells.Part.VOLTS, "V");

    private NoteRows() {}

    /**
     * Reads them; rows in which nothing stands are left out.
     *
     * @param wrong grows by what cannot be read, each at its row and part
     */
    static List<OwnersNote> read(List<MySystem.Note> rows, List<FormReading.Wrong> wrong) {
        int[] row = {0};
        NoteCells cells =
                new NoteCells(
                        (part, message) ->
                                wrong.add(
                                        new FormReading.Wrong(
                                                "notes." + row[0] + "." + part.key(), message)));
        for (MySystem.Note note : rows) {
            if (!note.isEmpty()) {
                cells.read(part -> withoutUnit(note, part));
            }
            row[0]++;
        }
        return cells.notes();
    }

    /** Tells, at the rows together, if they are too few for an answer. */
    static void enough(List<OwnersNote> notes, List<FormReading.Wrong> wrong) {
        String few = NoteCells.tooFew(notes);
        if (few != null) {
            wrong.add(new FormReading.Wrong("notes", few));
        }
    }

    private static String withoutUnit(MySystem.Note note, NoteCells.Part part) {
        String text = note.text(part);
        String unit = UNITS.get(part);
        if (unit == null) {
            return text;
        }
        boolean isTyped = text.toLowerCase(Locale.ROOT).endsWith(unit.toLowerCase(Locale.ROOT));
        return isTyped ? text.substring(0, text.length() - unit.length()).strip() : text;
    }
}
