package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/**
 * Reads a measured log from a CSV file.
 *
 * <p>Recognised and reported: semicolons or tabs between cells, decimal commas, a byte-order mark,
 * a row of units under the header, repeated times. Refused with the row: a time that runs
 * backwards, a missing cell, a cell that is no number, a column that is not there. Reading stops
 * after {@value #MOST_PROBLEMS} problems.
 */
public final class LogReader {
    private static final int MOST_PROBLEMS = 10;
    private static final String[] OPTION = {
        "--time", "--current", "--voltage", "--temperature", "--counter", "--uptime", "--shown"
    };

    /** The column whose cells may be empty: a unit does not always show a figure. */
    private static final int SHOWN = 6;

    private final Path path;
    private final String file;
    private final LogOptions options;
    private final NumberCells numbers = new NumberCells();
    private final TimeCells times;
    private final List<LogProblem> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    // State of one reading: positions of the columns in the order of OPTION, and the row before.
    private final int[] positions = new int[OPTION.length];
    private char separator = ',';
    private int headerLine;
    private boolean firstRow = true;
    private long lastNanos;
    private int repeatedTimes;
    private int firstRepeatedLine;

    private LogReader(Path path, LogOptions options) {
        this.path = path;
        this.file = path.toString();
        this.options = options;
        this.times = new TimeCells(numbers, options.zone());
    }

    /**
     * Reads a file.
     *
     * @param path the file
     * @param options what the file does not say
     * @return at least two rows
     * @throws LogException if the file cannot be read or counted, with every problem found
     */
    public static MeasuredLog read(Path path, LogOptions options) throws LogException {
        return new LogReader(path, options).readAll();
    }

    private MeasuredLog readAll() throws LogException {
        try {
            if (!Files.isRegularFile(path)) {
                throw new LogException(
                        List.of(whole(Files.exists(path) ? "is not a file" : "does not exist")));
            }
            FileShape shape = FileShape.of(path);
            if (shape.empty()) {
                throw new LogException(List.of(whole("the file is empty; expected a header row")));
            }
            separator = shape.separator();
            notes.addAll(shape.notes());
            try (CsvReader<CsvRecord> csv = shape.open(path)) {
                return readRows(csv);
            }
        } catch (NoSuchFileException e) {
            throw new LogException(List.of(whole("does not exist")));
        } catch (IOException | UncheckedIOException e) {
            throw new LogException(List.of(whole("cannot be read: " + e.getMessage())));
        } catch (CsvParseException e) {
            throw new LogException(List.of(whole("is not well-formed CSV: " + e.getMessage())));
        }
    }

    private MeasuredLog readRows(CsvReader<CsvRecord> csv) throws LogException {
        MeasuredLog.Builder builder = null;
        for (CsvRecord record : csv) {
            if (builder == null) {
                builder = readHeader(record);
            } else if (!isUnitsRow(record)) {
                readRow(record, builder);
            }
            if (problems.size() >= MOST_PROBLEMS) {
                problems.add(whole("reading stopped after " + MOST_PROBLEMS + " problems"));
                break;
            }
        }
        if (problems.isEmpty() && (builder == null || builder.rows() < 2)) {
            problems.add(
                    whole(
                            "the log has "
                                    + (builder == null || builder.rows() == 0 ? "no" : "one")
                                    + " row under the header; at least two are needed, for a row"
                                    + " says nothing about time without another"));
        }
        if (!problems.isEmpty() || builder == null) {
            throw new LogException(problems);
        }
        finishNotes();
        return builder.build(notes);
    }

    private MeasuredLog.Builder readHeader(CsvRecord record) throws LogException {
        headerLine = (int) record.getStartingLineNumber();
        List<String> names = new ArrayList<>(record.getFields());
        names.set(0, CsvCells.withoutMark(names.get(0)));
        ColumnFinder finder = new ColumnFinder(file, headerLine, names);
        LogColumns columns = options.columns();
        positions[0] = finder.find(OPTION[0], columns.time());
        positions[1] = finder.find(OPTION[1], columns.current());
        positions[2] = finder.find(OPTION[2], columns.voltage());
        positions[3] = finder.find(OPTION[3], columns.temperature());
        positions[4] = finder.find(OPTION[4], columns.counter());
        positions[5] = finder.find(OPTION[5], columns.uptime());
        positions[SHOWN] = finder.find(OPTION[SHOWN], columns.shown());
        problems.addAll(finder.problems());
        String wrong = UnitWords.wrongCurrent(columns.current(), options.currentUnit());
        if (wrong != null) {
            problems.add(new LogProblem(file, headerLine, 0, wrong));
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
        return new MeasuredLog.Builder(
                file,
                new boolean[] {
                    true,
                    positions[2] >= 0,
                    positions[3] >= 0,
                    positions[4] >= 0,
                    positions[5] >= 0,
                    positions[SHOWN] >= 0
                });
    }

    /** The first row under the header is one of units when neither time nor current is a value. */
    private boolean isUnitsRow(CsvRecord record) {
        if (!firstRow) {
            return false;
        }
        firstRow = false;
        String time = cell(record, 0);
        String current = cell(record, 1);
        boolean values = TimeCells.isTime(time) || NumberCells.isNumber(current);
        boolean empty = time.isEmpty() && current.isEmpty();
        if (values || empty || startsWithDigit(current)) {
            return false;
        }
        StringBuilder said = new StringBuilder();
        for (int c = 0; c < OPTION.length; c++) {
            if (positions[c] >= 0) {
                said.append(said.isEmpty() ? "" : ", ").append(cell(record, c));
            }
        }
        int line = (int) record.getStartingLineNumber();
        notes.add("row " + line + " is a row of units: " + Texts.shortened(said.toString()));
        checkUnit(line, UnitWords.wrongTime(time));
        checkUnit(line, UnitWords.wrongCurrentCell(current, options.currentUnit()));
        checkUnit(line, UnitWords.wrongOther(cell(record, 2), "volts", Set.of("mV", "kV")));
        checkUnit(
                line,
                UnitWords.wrongOther(cell(record, 3), "degrees Celsius", Set.of("F", "°F", "K")));
        checkUnit(
                line,
                UnitWords.wrongOther(cell(record, 4), "ampere-hours", Set.of("mAh", "As", "C")));
        return true;
    }

    private static boolean startsWithDigit(String cell) {
        return !cell.isEmpty() && Character.isDigit(cell.charAt(0));
    }

    private void checkUnit(int line, @Nullable String wrong) {
        if (wrong != null) {
            problems.add(new LogProblem(file, line, 0, wrong));
        }
    }

    private void readRow(CsvRecord record, MeasuredLog.Builder builder) {
        int line = (int) record.getStartingLineNumber();
        double[] row = new double[MeasuredLog.Builder.COLUMNS];
        int before = problems.size();
        long nanos = readTime(record, line, builder.rows() > 0);
        for (int c = 1; c < OPTION.length; c++) {
            if (positions[c] >= 0) {
                try {
                    String cell = cell(record, c);
                    boolean blank = c == SHOWN && cell.isEmpty();
                    row[c - 1] = blank ? Double.NaN : numbers.nearest(cell);
                } catch (CellException e) {
                    problem(record, c, e);
                }
            }
        }
        if (problems.size() > before) {
            return;
        }
        int sign = options.positiveIsCharge() ? 1 : -1;
        int perAmp = options.currentUnit() == CurrentUnit.MA ? CurrentUnit.MA.perAmp() : 1;
        // Adding zero turns a negative zero into zero, so that a turned log prints no "-0".
        row[0] = sign * row[0] / perAmp + 0.0;
        row[3] = sign * row[3] + 0.0;
        builder.add(line, nanos, row);
    }

    private long readTime(CsvRecord record, int line, boolean hasRowBefore) {
        try {
            long nanos = times.nanos(cell(record, 0), line);
            if (hasRowBefore && nanos < lastNanos) {
                throw new CellException(
                        "time runs backwards by "
                                + Durations.words(lastNanos - nanos)
                                + " from the row before; expected rows in order of time");
            }
            if (hasRowBefore && nanos == lastNanos && repeatedTimes++ == 0) {
                firstRepeatedLine = line;
            }
            lastNanos = nanos;
            return nanos;
        } catch (CellException e) {
            problem(record, 0, e);
            return lastNanos;
        }
    }

    private void problem(CsvRecord record, int column, CellException e) {
        int line = (int) record.getStartingLineNumber();
        int character = CsvCells.characterOf(record, positions[column], separator);
        String name = OPTION[column].substring(2);
        problems.add(new LogProblem(file, line, character, name + ": " + e.getMessage()));
    }

    private String cell(CsvRecord record, int column) {
        return CsvCells.cell(record, positions[column]);
    }

    private void finishNotes() {
        if (numbers.decimalMark() == ',') {
            notes.add("numbers have decimal commas");
        }
        if (repeatedTimes > 0) {
            notes.add(
                    (repeatedTimes == 1 ? "1 row repeats" : repeatedTimes + " rows repeat")
                            + " the time of the row before (first: row "
                            + firstRepeatedLine
                            + "); no time passes between them");
        }
        if (options.zone() != null && !times.hasDates()) {
            notes.add("--zone is not used: the time column holds seconds");
        }
        notes.addAll(times.notes());
    }

    private LogProblem whole(String message) {
        return new LogProblem(file, 0, 0, message);
    }
}
