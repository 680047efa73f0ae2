package org.gaugebench.sim.judge;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Two traces, held against each other cell by cell. The first column of both is {@code time_s};
 * columns of one name are compared, in numbers where both are numbers, else as words.
 */
public final class TraceComparison {
    private static final int LONGEST_NUMBER = 40;

    private final Side a;
    private final Side b;
    private final List<Column> columns = new ArrayList<>();
    private long rows;
    private long endMillis;

    private TraceComparison(Side a, Side b) {
        this.a = a;
        this.b = b;
    }

    /**
     * One side.
     *
     * @param file a trace
     * @param gauge only the columns of this gauge, compared without its name; empty for all
     */
    public record Side(Path file, String gauge) {
        /** File and gauge, for people. */
        public String name() {
            return file + (gauge.isEmpty() ? "" : "#" + gauge);
        }
    }

    /** One column of both, and how it differs so far. */
    private static final class Column {
        private final String name;
        private final int atA;
        private final int atB;
        private long firstMillis = -1;
        private String firstA = "";
        private String firstB = "";
        private @Nullable BigDecimal worst;
        private long worstMillis = -1;
        private long count;

        Column(String name, int atA, int atB) {
            this.name = name;
            this.atA = atA;
            this.atB = atB;
        }

        void look(String left, String right, long millis) {
            BigDecimal numberA = number(left);
            BigDecimal numberB = number(right);
            if (numberA == null || numberB == null) {
                if (!left.equals(right)) {
                    count(left, right, millis);
                }
                return;
            }
            BigDecimal difference = numberB.subtract(numberA);
            if (difference.signum() == 0) {
                return;
            }
            count(left, right, millis);
            BigDecimal before = worst;
            if (before == null || difference.abs().compareTo(before.abs()) > 0) {
                worst = difference;
                worstMillis = millis;
            }
        }

        private void count(String left, String right, long millis) {
            if (count == 0) {
                firstMillis = millis;
                firstA = left;
                firstB = right;
                worstMillis = millis;
            }
            count++;
        }

        Divergence divergence() {
            return new Divergence(name, "", firstMillis, firstA, firstB, worst, worstMillis, count);
        }
    }

    private static @Nullable BigDecimal number(String text) {
        return text.length() <= LONGEST_NUMBER && text.matches("[+-]?\\d+(\\.\\d+)?")
                ? new BigDecimal(text)
                : null;
    }

    /**
     * Reads both and compares them.
     *
     * @throws ComparisonException if one cannot be read, or they have no rows or columns in common
     */
    public static Comparison of(Side a, Side b) throws ComparisonException {
        return new TraceComparison(a, b).run();
    }

    private Comparison run() throws ComparisonException {
        try (CsvReader<CsvRecord> left = open(a);
                CsvReader<CsvRecord> right = open(b)) {
            Iterator<CsvRecord> rowsA = left.iterator();
            Iterator<CsvRecord> rowsB = right.iterator();
            readHeaders(header(a, rowsA), header(b, rowsB));
            while (rowsA.hasNext() && rowsB.hasNext()) {
                look(rowsA.next(), rowsB.next());
            }
            if (rowsA.hasNext() || rowsB.hasNext()) {
                throw new ComparisonException(
                        "one trace ends at %s and the other goes on; give both the same duration"
                                .formatted(Figures.moment(endMillis)));
            }
        } catch (IOException | UncheckedIOException e) {
            throw new ComparisonException("a trace cannot be read: " + e.getMessage());
        } catch (CsvParseException e) {
            throw new ComparisonException("a trace is not well-formed CSV: " + e.getMessage());
        }
        List<Divergence> list =
                new ArrayList<>(
                        columns.stream().filter(c -> c.count > 0).map(Column::divergence).toList());
        list.sort(Comparator.comparingLong(Divergence::firstMillis));
        return new Comparison(a.name(), b.name(), rows, endMillis, list);
    }

    private static CsvReader<CsvRecord> open(Side side) throws IOException {
        if (!Files.isRegularFile(side.file())) {
            throw new IOException("there is no file " + side.file());
        }
        return CsvReader.builder()
                .missingFieldStrategy(FieldMismatchStrategy.STRICT)
                .extraFieldStrategy(FieldMismatchStrategy.STRICT)
                .ofCsvRecord(Files.newBufferedReader(side.file()));
    }

    private static List<String> header(Side side, Iterator<CsvRecord> rows)
            throws ComparisonException {
        List<String> names = rows.hasNext() ? rows.next().getFields() : List.of();
        if (names.isEmpty() || !names.get(0).equals("time_s")) {
            throw new ComparisonException(
                    side.file()
                            + ":1:1: expected a trace, whose first column is time_s, as"
                            + " 'run --trace' writes it");
        }
        return names;
    }

    private void readHeaders(List<String> namesA, List<String> namesB) throws ComparisonException {
        for (int i = 1; i < namesA.size(); i++) {
            String name = withoutGauge(namesA.get(i), a);
            for (int j = 1; j < namesB.size(); j++) {
                if (name != null && name.equals(withoutGauge(namesB.get(j), b))) {
                    columns.add(new Column(name, i, j));
                }
            }
        }
        if (columns.isEmpty()) {
            throw new ComparisonException(
                    "%s and %s have no column in common; name a gauge of each, such as %s#gauge"
                            .formatted(a.name(), b.name(), a.file()));
        }
    }

    private static @Nullable String withoutGauge(String name, Side side) {
        if (side.gauge().isEmpty()) {
            return name;
        }
        String lead = side.gauge().replaceAll("[^A-Za-z0-9]+", "_") + "_";
        return name.startsWith(lead) ? name.substring(lead.length()) : null;
    }

    private void look(CsvRecord rowA, CsvRecord rowB) throws ComparisonException {
        BigDecimal timeA = number(rowA.getField(0));
        BigDecimal timeB = number(rowB.getField(0));
        if (timeA == null || timeB == null || timeA.compareTo(timeB) != 0) {
            throw new ComparisonException(
                    "%s:%s:1: the time is '%s', and '%s' in the other trace; write both with the"
                                    .formatted(
                                            a.file(),
                                            rowA.getStartingLineNumber(),
                                            rowA.getField(0),
                                            rowB.getField(0))
                            + " same --trace-every");
        }
        rows++;
        endMillis = timeA.movePointRight(3).longValue();
        for (Column column : columns) {
            column.look(rowA.getField(column.atA), rowB.getField(column.atB), endMillis);
        }
    }
}
