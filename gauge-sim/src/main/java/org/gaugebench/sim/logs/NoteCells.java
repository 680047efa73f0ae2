package org.gaugebench.sim.logs;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/**
 * Reads notes part by part, wherever they were written: the same limits and the same words for a
 * file and for a form.
 */
public final class NoteCells {
    private static final double LEAST_HOURS = 12;
    private static final int LEAST_NOTES = 4;

    private final Trouble trouble;
    private final List<OwnersNote> notes = new ArrayList<>();
    private final NumberCells numbers = new NumberCells();
    private final TimeCells times = new TimeCells(numbers, ZoneOffset.UTC);
    private double origin = Double.NaN;
    private int row;
    private int problemCount;

    /** Parts of a note, in the order in which they are told. */
    public enum Part {
        /** Date and time, or hours. */
        TIME("time"),
        /** Percent shown. */
        SHOWN("shown"),
        /** Amp-hours shown as left. */
        AH("ah"),
        /** Amp-hours put in since the note before. */
        CHARGED("charged"),
        /** Volts. */
        VOLTS("volts"),
        /** What had happened. */
        WORD("word");

        private final String key;

        Part(String key) {
            this.key = key;
        }

        /** As it stands in a header. */
        public String key() {
            return key;
        }
    }

    /** Hears what is wrong. */
    public interface Trouble {
        /**
         * A part cannot be read.
         *
         * @param part which
         * @param message what is wrong, what was expected and an example
         */
        void wrong(Part part, String message);
    }

    /** What stands in a row; an empty text where nothing does. */
    public interface Row {
        /** A part's text, without spaces around it. */
        String text(Part part);
    }

    /**
     * Begins.
     *
     * @param trouble hears what is wrong with the row that is being read
     */
    public NoteCells(Trouble trouble) {
        this.trouble = trouble;
    }

    /** Reads the next row; it becomes a note if nothing is wrong with it. */
    public void read(Row texts) {
        row++;
        int before = problemCount;
        double hours = time(texts.text(Part.TIME));
        Double percent = number(texts, Part.SHOWN, -1_000, 1_000, "a percent such as 82");
        Double shown = number(texts, Part.AH, -100_000, 100_000, "amp-hours shown, such as 65.2");
        Double charged = number(texts, Part.CHARGED, 0, 100_000, "amp-hours put in, such as 24");
        Double volts = number(texts, Part.VOLTS, 0, 1_000, "volts such as 12.7");
        OwnersNote.Word word = word(texts.text(Part.WORD));
        if (percent == null && problemCount == before) {
            wrong(Part.SHOWN, "the cell is empty; expected a percent such as 82");
        }
        if (percent != null && problemCount == before) {
            notes.add(new OwnersNote(hours, percent, shown, charged, volts, word));
        }
    }

    /** The notes so far, in order of time. */
    public List<OwnersNote> notes() {
        return List.copyOf(notes);
    }

    /**
     * What is missing for an answer.
     *
     * @param notes in order of time
     * @return one sentence, or null if they say enough
     */
    public static @Nullable String tooFew(List<OwnersNote> notes) {
        boolean few =
                notes.size() < LEAST_NOTES || notes.get(notes.size() - 1).hours() < LEAST_HOURS;
        return few
                ? notes.size()
                        + (notes.size() == 1 ? " note says" : " notes say")
                        + " too little; expected four or more, over 12 h or longer"
                : null;
    }

    private void wrong(Part part, String message) {
        problemCount++;
        trouble.wrong(part, message);
    }

    private double time(String cell) {
        String example = "; expected for instance 2026-05-03T07:00, or hours: 7.5";
        try {
            // A number counts hours, not seconds.
            long nanos = times.nanos(cell, row);
            double hours = nanos / (times.hasDates() ? 3.6e12 : 1e9);
            if (Double.isNaN(origin)) {
                origin = hours;
            }
            double since = hours - origin;
            if (!notes.isEmpty() && since <= notes.get(notes.size() - 1).hours()) {
                wrong(
                        Part.TIME,
                        "'"
                                + cell
                                + "' is not later than the note before;"
                                + " expected notes in order of time");
            }
            return since;
        } catch (CellException e) {
            boolean isOther = times.hasDates() && NumberCells.isNumber(cell);
            if (cell.isEmpty()) {
                wrong(Part.TIME, "the cell is empty" + example);
            } else if (isOther || !TimeCells.isTime(cell)) {
                // The reader of times would speak of seconds, as other logs have them.
                wrong(Part.TIME, "'" + Texts.shortened(cell) + "' is not a time" + example);
            } else {
                wrong(Part.TIME, e.getMessage() + example);
            }
            return 0;
        }
    }

    private @Nullable Double number(
            Row texts, Part part, double least, double most, String expected) {
        String cell = texts.text(part);
        if (cell.isEmpty()) {
            return null;
        }
        try {
            double value = numbers.nearest(cell);
            if (value >= least && value <= most) {
                return value;
            }
            wrong(part, "'" + cell + "' cannot be; expected " + expected);
        } catch (CellException e) {
            wrong(
                    part,
                    NumberCells.isNumber(cell)
                            ? e.getMessage() + "; expected " + expected
                            : "'%s' is not a number; expected %s"
                                    .formatted(Texts.shortened(cell), expected));
        }
        return null;
    }

    private OwnersNote.@Nullable Word word(String cell) {
        if (cell.isEmpty()) {
            return null;
        }
        for (OwnersNote.Word each : OwnersNote.Word.values()) {
            if (each.key().equals(cell)) {
                return each;
            }
        }
        wrong(
                Part.WORD,
                "'%s' is no word known here; expected one of %s, or an empty cell"
                        .formatted(
                                Texts.shortened(cell),
                                Arrays.stream(OwnersNote.Word.values())
                                        .map(OwnersNote.Word::key)
                                        .collect(Collectors.joining(", "))));
        return null;
    }
}
