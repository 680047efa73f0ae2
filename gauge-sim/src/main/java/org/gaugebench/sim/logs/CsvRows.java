package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * The rows of a file that is refused whole when anything is wrong in it: a header, then rows, and
 * every problem with its line and column.
 */
final class CsvRows {
    /**
     * How a refusal of the whole file ends, after "expected"; empty where nothing is said.
     *
     * @param large of a file beyond the limit
     * @param empty of a file with white space alone
     * @param unreadable of a file that the system does not give
     * @param malformed of a file that is no CSV
     */
    record Expected(String large, String empty, String unreadable, String malformed) {}

    /** Looks at the first row. */
    interface Header {
        void read(CsvRecord record) throws LogException;
    }

    private final String file;
    private final List<LogProblem> problems = new ArrayList<>();
    private char separator = ',';

    /**
     * Rows of a file.
     *
     * @param file its name in messages
     */
    CsvRows(String file) {
        this.file = file;
    }

    /**
     * Goes through a file.
     *
     * @param path a file
     * @param mostBytes a whole number of MiB
     * @param expected how refusals end
     * @param header looks at the first row
     * @param row looks at each further one; false where reading is to stop
     * @throws LogException if the whole file is refused, or by the header
     */
    void read(Path path, long mostBytes, Expected expected, Header header, Predicate<CsvRecord> row)
            throws LogException {
        try {
            if (Files.size(path) > mostBytes) {
                String large = "the file is larger than " + (mostBytes >> 20) + " MiB";
                throw refusal(large, expected.large());
            }
            FileShape shape = FileShape.of(path);
            if (shape.empty()) {
                throw refusal("the file is empty", expected.empty());
            }
            separator = shape.separator();
            try (CsvReader<CsvRecord> csv = shape.open(path)) {
                rows(csv, header, row);
            }
        } catch (IOException | UncheckedIOException e) {
            throw refusal(why(path), expected.unreadable());
        } catch (CsvParseException e) {
            throw refusal("not well-formed CSV: " + e.getMessage(), expected.malformed());
        }
    }

    private static String why(Path path) {
        if (Files.isDirectory(path)) {
            return "this is a folder";
        }
        return Files.exists(path) ? "the file cannot be read" : "there is no such file";
    }

    private static void rows(CsvReader<CsvRecord> csv, Header header, Predicate<CsvRecord> row)
            throws LogException {
        boolean isFirst = true;
        for (CsvRecord record : csv) {
            if (isFirst) {
                header.read(record);
                isFirst = false;
            } else if (!row.test(record)) {
                return;
            }
        }
    }

    int problemCount() {
        return problems.size();
    }

    /** Adds a problem that no row has. */
    void problem(LogProblem problem) {
        problems.add(problem);
    }

    /** Adds a problem of a cell. */
    void problem(CsvRecord record, int position, String message) {
        problems.add(
                new LogProblem(
                        file,
                        Math.toIntExact(record.getStartingLineNumber()),
                        CsvCells.characterOf(record, position, separator),
                        message));
    }

    /** Refuses the file if there is any problem. */
    void refuseProblems() throws LogException {
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
    }

    /** A refusal of the whole file. */
    LogException refusal(String message) {
        return new LogException(List.of(new LogProblem(file, 1, 1, message)));
    }

    private LogException refusal(String message, String expected) {
        return refusal(expected.isEmpty() ? message : message + "; expected " + expected);
    }
}
