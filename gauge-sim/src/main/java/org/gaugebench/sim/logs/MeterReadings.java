package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/** Reads what was written into the empty columns of a sheet: a header, then one check a row. */
public final class MeterReadings {
    /** A file that reads. */
    public static final String EXAMPLE = "check,meter,gauge, then scale-working,-9.8 A,-9.9 A";

    private static final List<String> HEADER = List.of("check", "meter", "gauge");
    private static final long MOST_BYTES = 1L << 20;
    private static final int MOST_PROBLEMS = 20;

    private final String file;
    private final List<LogProblem> problems = new ArrayList<>();
    private final List<MeterReading> readings = new ArrayList<>();
    private final Set<MeterCheck> seen = EnumSet.noneOf(MeterCheck.class);
    private char separator = ',';

    private MeterReadings(String file) {
        this.file = file;
    }

    /**
     * Reads a file. A row whose columns are both empty counts as not done.
     *
     * @param path a file
     * @param shown its name in messages
     * @return at least one reading, in order of the file
     * @throws LogException with every problem found
     */
    public static List<MeterReading> read(Path path, String shown) throws LogException {
        return new MeterReadings(shown).read(path);
    }

    private List<MeterReading> read(Path path) throws LogException {
        try {
            if (Files.size(path) > MOST_BYTES) {
                throw refusal("the file is larger than 1 MiB; expected " + EXAMPLE);
            }
            FileShape shape = FileShape.of(path);
            if (shape.empty()) {
                throw refusal("the file is empty; expected " + EXAMPLE);
            }
            separator = shape.separator();
            try (CsvReader<CsvRecord> csv = shape.open(path)) {
                rows(csv);
            }
        } catch (IOException | UncheckedIOException e) {
            throw refusal("the file cannot be read; expected " + EXAMPLE);
        } catch (CsvParseException e) {
            throw refusal("not well-formed CSV: " + e.getMessage() + "; expected " + EXAMPLE);
        }
        if (problems.isEmpty() && readings.isEmpty()) {
            throw refusal("nothing was measured; expected " + EXAMPLE);
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
        return List.copyOf(readings);
    }

    private void rows(CsvReader<CsvRecord> csv) throws LogException {
        boolean header = true;
        for (CsvRecord record : csv) {
            if (problems.size() >= MOST_PROBLEMS) {
                problem(record, 0, "reading stopped: too much is wrong");
                return;
            }
            if (header) {
                header(record);
                header = false;
            } else {
                row(record);
            }
        }
    }

    private void header(CsvRecord record) throws LogException {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < record.getFieldCount(); i++) {
            found.add(
                    CsvCells.withoutMark(CsvCells.cell(record, i))
                            .toLowerCase(Locale.ROOT)
                            .strip());
        }
        if (!found.equals(HEADER)) {
            // Every row would say the same once more.
            problem(
                    record,
                    0,
                    "expected the header check,meter,gauge, but found '%s'"
                            .formatted(Texts.shortened(String.join(",", found))));
            throw new LogException(problems);
        }
    }

    private void row(CsvRecord record) {
        if (record.getFieldCount() > HEADER.size()) {
            problem(
                    record,
                    HEADER.size(),
                    "a cell too many; expected three, such as scale-working,-9.8 A,-9.9 A");
            return;
        }
        MeterCheck check = check(record);
        boolean isEmpty = CsvCells.cell(record, 1).isEmpty() && CsvCells.cell(record, 2).isEmpty();
        if (check == null || isEmpty) {
            return;
        }
        if (!seen.add(check)) {
            problem(record, 0, "'" + check.key() + "' is there twice; expected it once");
            return;
        }
        int before = problems.size();
        double meter = amount(record, 1, check, check.byMeter(), check.meterExample());
        double gauge = amount(record, 2, check, check.byGauge(), check.gaugeExample());
        if (problems.size() == before) {
            readings.add(new MeterReading(check, meter, gauge));
        }
    }

    private @Nullable MeterCheck check(CsvRecord record) {
        String cell = CsvCells.cell(record, 0);
        for (MeterCheck each : MeterCheck.values()) {
            if (each.key().equals(cell)) {
                return each;
            }
        }
        String all =
                Arrays.stream(MeterCheck.values())
                        .map(MeterCheck::key)
                        .collect(Collectors.joining(", "));
        problem(
                record,
                0,
                "no such check '%s'; expected one of %s".formatted(Texts.shortened(cell), all));
        return null;
    }

    private double amount(
            CsvRecord record,
            int position,
            MeterCheck check,
            @Nullable Dimension dimension,
            String example) {
        String cell = CsvCells.cell(record, position);
        if (dimension == null) {
            if (!cell.isEmpty()) {
                problem(
                        record,
                        position,
                        "'%s' has no figure in this column; expected an empty cell, but found '%s'"
                                .formatted(check.key(), Texts.shortened(cell)));
            }
            return 0;
        }
        try {
            double amount = Quantity.parse(cell, dimension).amount().doubleValue();
            double base = dimension == Dimension.DURATION ? amount / 3_600 : amount;
            if (Math.abs(base) > most(dimension) || isImpossible(dimension, base)) {
                problem(
                        record,
                        position,
                        "'%s' cannot be; expected for instance %s"
                                .formatted(Texts.shortened(cell), example));
            }
            return base;
        } catch (QuantityException e) {
            problem(record, position, e.getMessage() + ", for '" + check.key() + "'");
            return 0;
        }
    }

    private static boolean isImpossible(Dimension dimension, double base) {
        return (dimension == Dimension.DURATION || dimension == Dimension.VOLTAGE) && base <= 0;
    }

    private static double most(Dimension dimension) {
        return switch (dimension) {
            case VOLTAGE -> 100;
            case DURATION -> 1_000;
            default -> 10_000;
        };
    }

    private void problem(CsvRecord record, int position, String message) {
        problems.add(
                new LogProblem(
                        file,
                        Math.toIntExact(record.getStartingLineNumber()),
                        CsvCells.characterOf(record, position, separator),
                        message));
    }

    private LogException refusal(String message) {
        return new LogException(List.of(new LogProblem(file, 1, 1, message)));
    }
}
