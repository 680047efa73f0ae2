package org.gaugebench.sim.units;

import static java.util.stream.Collectors.groupingBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The unit symbols people may write, as one table. Within a dimension the order is the order in
 * which the writer looks for the one that shows a value best: largest first.
 *
 * @param symbol as written, after spellings of micro and ohm are made one
 * @param dimension what it measures
 * @param size in the dimension's base unit
 * @param written whether the writer uses it too
 */
record UnitSymbol(String symbol, Dimension dimension, BigDecimal size, boolean written) {
    private static final List<UnitSymbol> TABLE = table();
    private static final Map<Dimension, List<UnitSymbol>> WRITTEN =
            TABLE.stream().filter(UnitSymbol::written).collect(groupingBy(UnitSymbol::dimension));

    private static List<UnitSymbol> table() {
        List<UnitSymbol> table = new ArrayList<>();
        add(table, Dimension.CURRENT, true, "A", "1", "mA", "0.001", "uA", "0.000001");
        add(table, Dimension.VOLTAGE, true, "V", "1", "mV", "0.001", "uV", "0.000001");
        add(table, Dimension.VOLTAGE, true, "nV", "0.000000001");
        add(table, Dimension.RESISTANCE, true, "Ohm", "1", "mOhm", "0.001");
        add(table, Dimension.RESISTANCE, true, "uOhm", "0.000001");
        add(table, Dimension.RESISTANCE, false, "ohm", "1", "mohm", "0.001", "uohm", "0.000001");
        add(table, Dimension.POWER, true, "W", "1", "mW", "0.001", "uW", "0.000001");
        add(table, Dimension.POWER, false, "kW", "1000");
        add(table, Dimension.CHARGE, true, "Ah", "1", "mAh", "0.001", "uAh", "0.000001");
        add(table, Dimension.DURATION, true, "d", "86400", "h", "3600", "min", "60", "s", "1");
        add(table, Dimension.DURATION, true, "ms", "0.001");
        add(table, Dimension.TEMPERATURE, true, "°C", "1");
        add(table, Dimension.TEMPERATURE, false, "C", "1");
        add(table, Dimension.TEMPERATURE_DIFFERENCE, true, "K", "1");
        add(table, Dimension.TEMPERATURE_RISE_PER_POWER, true, "K/W", "1");
        add(table, Dimension.RATIO, true, "%", "0.01", "ppm", "0.000001");
        add(table, Dimension.VOLTAGE_PER_TEMPERATURE, false, "V/K", "1");
        add(table, Dimension.VOLTAGE_PER_TEMPERATURE, true, "mV/K", "0.001", "uV/K", "0.000001");
        add(table, Dimension.VOLTAGE_PER_TEMPERATURE, true, "nV/K", "0.000000001");
        add(table, Dimension.RATIO_PER_TEMPERATURE, true, "%/K", "0.01", "ppm/K", "0.000001");
        add(table, Dimension.VOLTAGE_PER_TEMPERATURE, false, "mV/°C", "0.001", "mV/C", "0.001");
        add(table, Dimension.RATIO_PER_MONTH, true, "%/month", "0.01", "ppm/month", "0.000001");
        add(table, Dimension.FREQUENCY, true, "Hz", "1", "mHz", "0.001");
        add(table, Dimension.FREQUENCY, false, "kHz", "1000");
        add(table, Dimension.COUNTS, true, "counts", "1");
        add(table, Dimension.COUNTS, false, "count", "1");
        add(table, Dimension.BITS, true, "bit", "1");
        add(table, Dimension.BITS, false, "bits", "1");
        return List.copyOf(table);
    }

    private static void add(
            List<UnitSymbol> table, Dimension dimension, boolean written, String... pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            table.add(new UnitSymbol(pairs[i], dimension, new BigDecimal(pairs[i + 1]), written));
        }
    }

    /** The table row of a symbol; case counts, because mW is not MW. */
    static @Nullable UnitSymbol of(String symbol) {
        for (UnitSymbol row : TABLE) {
            if (row.symbol.equals(symbol)) {
                return row;
            }
        }
        return null;
    }

    /** A symbol of the dimension that differs in case only, for a hint. */
    static @Nullable UnitSymbol ofAnyCase(String symbol, Dimension dimension) {
        for (UnitSymbol row : TABLE) {
            if (row.dimension == dimension && row.symbol.equalsIgnoreCase(symbol)) {
                return row;
            }
        }
        return null;
    }

    /** The symbols that the writer uses for a dimension, largest first. */
    static List<UnitSymbol> writtenFor(Dimension dimension) {
        return WRITTEN.getOrDefault(dimension, List.of());
    }
}
