package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvRecord;
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
    private static final CsvRows.Expected EXPECTED =
            new CsvRows.Expected(EXAMPLE, EXAMPLE, EXAMPLE, EXAMPLE);

    private final CsvRows rows;
    private final List<MeterReading> readings = new ArrayList<>();
    private final Set<MeterCheck> seen = EnumSet.noneOf(MeterCheck.class);

    private MeterReadings(String file) {
        rows = new CsvRows(file);
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
        rows.read(path, MOST_BYTES, EXPECTED, this::header, this::row);
        if (rows.problemCount() == 0 && readings.isEmpty()) {
            throw rows.refusal("nothing was measured; expected " + EXAMPLE);
        }
        rows.refuseProblems();
        return List.copyOf(readings);
    }

    private boolean row(CsvRecord record) {
        if (rows.problemCount() >= MOST_PROBLEMS) {
            rows.problem(record, 0, "reading stopped: too much is wrong");
            return false;
        }
        reading(record);
        return true;
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
            rows.problem(
                    record,
                    0,
                    "expected the header check,meter,gauge, but found '%s'"
                            .formatted(Texts.shortened(String.join(",", found))));
            rows.refuseProblems();
        }
    }

    private void reading(CsvRecord record) {
        if (record.getFieldCount() > HEADER.size()) {
            rows.problem(
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
            rows.problem(record, 0, "'" + check.key() + "' is there twice; expected it once");
            return;
        }
        int before = rows.problemCount();
        double meter = amount(record, 1, check, check.byMeter(), check.meterExample());
        double gauge = amount(record, 2, check, check.byGauge(), check.gaugeExample());
        if (rows.problemCount() == before) {
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
        rows.problem(
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
                rows.problem(
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
                rows.problem(
                        record,
                        position,
                        "'%s' cannot be; expected for instance %s"
                                .formatted(Texts.shortened(cell), example));
            }
            return base;
        } catch (QuantityException e) {
            rows.problem(record, position, e.getMessage() + ", for '" + check.key() + "'");
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
}
