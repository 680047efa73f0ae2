package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.math.BigDecimal;
import java.math.RoundingMode;
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
    private static final CsvRows.Expected EXPECTED =
            new CsvRows.Expected(
                    "fewer rows or shorter ones", "a header row such as time_s,current_A", "", "");
    private static final Set<String> UNITS =
            Set.of("A", "mA", "uA", "kA", "W", "mW", "kW", "V", "mV", "kV", "Ah", "mAh", "Wh");

    private final Path path;
    private final String file;
    private final ProfileColumns columns;
    private final CsvRows csv;
    private final NumberCells numbers = new NumberCells();
    private int timePosition;
    private int valuePosition;
    private long[] millis = new long[1024];
    private long[] micros = new long[1024];
    private int rows;

    private ProfileReader(Path path, String file, ProfileColumns columns) {
        this.path = path;
        this.file = file;
        this.columns = columns;
        csv = new CsvRows(file);
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
        csv.read(path, LARGEST_BYTES, EXPECTED, this::readHeader, this::readRow);
        if (csv.problemCount() == 0 && rows < 2) {
            throw csv.refusal(
                    (rows == 0 ? "no row" : "one row")
                            + " under the header; expected two or more: the last one says when the"
                            + " profile ends");
        }
        csv.refuseProblems();
        return new TimeProfile(Arrays.copyOf(millis, rows), Arrays.copyOf(micros, rows));
    }

    private boolean readRow(CsvRecord record) {
        if (rows == MOST_ROWS) {
            csv.problem(record, timePosition, "more than " + MOST_ROWS + " rows");
            return false;
        }
        keepRow(record);
        if (csv.problemCount() >= MOST_PROBLEMS) {
            csv.problem(
                    new LogProblem(
                            file, 0, 0, "reading stopped after " + MOST_PROBLEMS + " problems"));
            return false;
        }
        return true;
    }

    private void readHeader(CsvRecord record) throws LogException {
        int line = (int) record.getStartingLineNumber();
        List<String> names = new ArrayList<>(record.getFields());
        names.set(0, CsvCells.withoutMark(names.get(0)));
        ColumnFinder finder = new ColumnFinder(file, line, names);
        timePosition = finder.find("time", columns.time());
        valuePosition = finder.find("the figures", columns.value());
        finder.problems().forEach(csv::problem);
        if (timePosition >= 0) {
            String wrong = UnitWords.wrongTime(columns.time());
            if (wrong != null) {
                csv.problem(record, timePosition, wrong);
            }
        }
        String unit = UnitWords.unitIn(columns.value()).replace('µ', 'u');
        if (valuePosition >= 0 && UNITS.contains(unit) && !unit.equals(columns.unit())) {
            csv.problem(
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
        csv.refuseProblems();
    }

    private void keepRow(CsvRecord record) {
        int before = csv.problemCount();
        long time = time(record);
        long value = value(record);
        if (csv.problemCount() > before) {
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
            csv.problem(record, timePosition, "time: " + e.getMessage());
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
            csv.problem(record, valuePosition, columns.value() + ": " + e.getMessage());
            return 0;
        }
    }
}
