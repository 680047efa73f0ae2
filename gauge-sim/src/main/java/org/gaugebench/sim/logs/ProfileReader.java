package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.units.Texts;

/**
 * Reads two columns of a CSV file as a profile. A measured log may have oddities that can be lived
 * with, and {@link LogReader} does; a profile is part of a scenario, so whatever is odd is refused:
 * an empty cell, a figure that is none, a time that does not rise, a unit other than the one said.
 *
 * <p>Times are rounded to the nearest millisecond and figures to the nearest millionth of the basic
 * unit, halves away from zero. Reading stops after {@value #MOST_PROBLEMS} problems.
 */
public final class ProfileReader {
    /** 64 MiB: two million rows of two long numbers. */
    public static final long LARGEST_BYTES = 64L << 20;

    /** Three weeks of seconds; as much as a machine keeps with ease. */
    public static final int MOST_ROWS = 2_000_000;

    /** As long as a run can be. */
    private static final BigDecimal LONGEST_MILLIS = BigDecimal.valueOf(Long.MAX_VALUE / 8);

    private static final int MOST_PROBLEMS = 10;
    private static final Set<String> UNITS =
            Set.of("A", "mA", "uA", "kA", "W", "mW", "kW", "V", "mV", "kV", "Ah", "mAh", "Wh");

    private final Path path;
    private final String file;
    private final ProfileColumns columns;
    private final NumberCells numbers = new NumberCells();
    private final List<LogProblem> problems = new ArrayList<>();
    private char separator = ',';
    private int timePosition;
    private int valuePosition;
    private long[] millis = new long[1024];
    private long[] micros = new long[1024];
    private int rows;

    private ProfileReader(Path path, String file, ProfileColumns columns) {
        this.path = path;
        this.file = file;
        this.columns = columns;
    }

    /**
     * Reads a file.
     *
     * @param path a file
     * @param shown its name in messages
     * @param columns which columns, and how
     * @return at least two rows
     * @throws LogException with every problem found
     */
    public static TimeProfile read(Path path, String shown, ProfileColumns columns)
            throws LogException {
        return new ProfileReader(path, shown, columns).read();
    }

    private TimeProfile read() throws LogException {
        try {
            if (Files.size(path) > LARGEST_BYTES) {
                throw refusal(
                        "the file is larger than 64 MiB; expected fewer rows or shorter ones");
            }
            FileShape shape = FileShape.of(path);
            if (shape.empty()) {
                throw refusal("the file is empty; expected a header row such as time_s,current_A");
            }
            separator = shape.separator();
            try (CsvReader<CsvRecord> csv = shape.open(path)) {
                readRows(csv);
            }
        } catch (IOException | UncheckedIOException e) {
            throw refusal("the file cannot be read");
        } catch (CsvParseException e) {
            throw refusal("not well-formed CSV: " + e.getMessage());
        }
        if (problems.isEmpty() && rows < 2) {
            throw refusal(
                    (rows == 0 ? "no row" : "one row")
                            + " under the header; expected two or more: the last one says when the"
                            + " profile ends");
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
        return new TimeProfile(Arrays.copyOf(millis, rows), Arrays.copyOf(micros, rows));
    }

    private void readRows(CsvReader<CsvRecord> csv) throws LogException {
        boolean header = true;
        for (CsvRecord record : csv) {
            if (header) {
                readHeader(record);
                header = false;
            } else if (rows == MOST_ROWS) {
                problem(record, timePosition, "more than " + MOST_ROWS + " rows");
                return;
            } else {
                readRow(record);
            }
            if (problems.size() >= MOST_PROBLEMS) {
                problems.add(
                        new LogProblem(
                                file,
                                0,
                                0,
                                "reading stopped after " + MOST_PROBLEMS + " problems"));
                return;
            }
        }
    }

    private void readHeader(CsvRecord record) throws LogException {
        int line = (int) record.getStartingLineNumber();
        List<String> names = new ArrayList<>(record.getFields());
        names.set(0, CsvCells.withoutMark(names.get(0)));
        ColumnFinder finder = new ColumnFinder(file, line, names);
        timePosition = finder.find("time", columns.time());
        valuePosition = finder.find("the figures", columns.value());
        problems.addAll(finder.problems());
        if (timePosition >= 0) {
            String wrong = UnitWords.wrongTime(columns.time());
            if (wrong != null) {
                problem(record, timePosition, wrong);
            }
        }
        String unit = UnitWords.unitIn(columns.value()).replace('µ', 'u');
        if (valuePosition >= 0 && UNITS.contains(unit) && !unit.equals(columns.unit())) {
            problem(
                    record,
                    valuePosition,
                    "the column '"
                            + columns.value()
                            + "' speaks of "
                            + unit
                            + ", but the scenario says 'unit: "
                            + columns.unit()
                            + "'");
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
    }

    private void readRow(CsvRecord record) {
        int before = problems.size();
        long time = time(record);
        long value = value(record);
        if (problems.size() > before) {
            return;
        }
        if (rows == millis.length) {
            millis = Arrays.copyOf(millis, rows + rows / 2);
            micros = Arrays.copyOf(micros, rows + rows / 2);
        }
        millis[rows] = time;
        micros[rows] = value;
        rows++;
    }

    private long time(CsvRecord record) {
        try {
            BigDecimal exact = numbers.exact(CsvCells.cell(record, timePosition));
            if (exact.signum() < 0) {
                throw new CellException(
                        "a time before the start of the run; expected 0 s for its first moment");
            }
            // Compared before it is written out: an exponent of 9999 makes a long number.
            if (exact.compareTo(LONGEST_MILLIS) > 0) {
                throw new CellException("a time beyond every run; is the unit seconds?");
            }
            long time = exact.movePointRight(3).setScale(0, RoundingMode.HALF_UP).longValue();
            long step = rows == 0 ? 1 : time - millis[rows - 1];
            if (step <= 0) {
                throw new CellException(
                        "the time does not rise from the row before, by at least 1 ms;"
                                + " expected rows in order of time, each once");
            }
            if (rows > 0 && columns.longestGapMillis() > 0 && step > columns.longestGapMillis()) {
                throw new CellException(
                        "a gap of "
                                + Durations.words(Math.min(step, 1L << 42) * 1_000_000)
                                + " after the row before, longer than 'longest-gap'; expected a"
                                + " row that says what flows in it");
            }
            return time;
        } catch (CellException e) {
            problem(record, timePosition, "time: " + e.getMessage());
            return 0;
        }
    }

    private long value(CsvRecord record) {
        try {
            String cell = CsvCells.cell(record, valuePosition);
            double near = numbers.nearest(cell);
            double limit = Math.max(columns.largestMicros(), -columns.smallestMicros());
            if (Math.abs(near) * StrictMath.pow(10, columns.places()) > 2 * limit) {
                throw new CellException("'" + Texts.shortened(cell) + "' is beyond the range");
            }
            BigDecimal exact = numbers.exact(cell).movePointRight(columns.places());
            long read = exact.setScale(0, RoundingMode.HALF_UP).longValue();
            long value = columns.turned() ? -read : read;
            if (value < columns.smallestMicros()) {
                throw new CellException(
                        "'" + Texts.shortened(cell) + "' " + columns.whenTooSmall());
            }
            if (value > columns.largestMicros()) {
                throw new CellException("'" + Texts.shortened(cell) + "' is beyond the range");
            }
            return value;
        } catch (CellException e) {
            problem(record, valuePosition, columns.value() + ": " + e.getMessage());
            return 0;
        }
    }

    private void problem(CsvRecord record, int position, String message) {
        problems.add(
                new LogProblem(
                        file,
                        (int) record.getStartingLineNumber(),
                        CsvCells.characterOf(record, position, separator),
                        message));
    }

    private LogException refusal(String message) {
        return new LogException(List.of(new LogProblem(file, 1, 1, message)));
    }
}
