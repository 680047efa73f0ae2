package org.gaugebench.sim.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/** Writes the integers of records as people read them; what it writes parses back exactly. */
public final class QuantityFormat {
    private static final List<UnitSymbol> DURATIONS = UnitSymbol.writtenFor(Dimension.DURATION);
    private static final long[] DURATION_MILLIS =
            DURATIONS.stream().mapToLong(it -> millis(it.size())).toArray();

    private QuantityFormat() {}

    /**
     * Writes a quantity.
     *
     * @param value number of steps
     * @param unit of the steps
     * @return number and unit, such as "250 mA"; times in parts, such as "2 h 30 min"
     */
    public static String format(long value, RecordUnit unit) {
        if (unit.dimension() == Dimension.DURATION && value > 0) {
            return duration(value, unit);
        }
        BigDecimal amount = BigDecimal.valueOf(value).multiply(unit.size());
        List<UnitSymbol> symbols = UnitSymbol.writtenFor(unit.dimension());
        UnitSymbol chosen = symbols.get(0);
        if (unit.dimension() == Dimension.DURATION) {
            chosen = symbols.get(3);
        } else if (unit.dimension() != Dimension.RATIO && value != 0) {
            // Percent stays percent however small: "0.1 %" reads better than "1000 ppm".
            for (UnitSymbol symbol : symbols) {
                chosen = symbol;
                if (amount.abs().compareTo(symbol.size()) >= 0) {
                    break;
                }
            }
        }
        return number(amount, chosen) + " " + chosen.symbol();
    }

    private static String number(BigDecimal amount, UnitSymbol symbol) {
        // Every size is a power of ten or, for counts, one: the quotient ends.
        BigDecimal quotient = amount.divide(symbol.size(), MathContext.UNLIMITED);
        return quotient.signum() == 0 ? "0" : quotient.stripTrailingZeros().toPlainString();
    }

    /**
     * Whole numbers throughout: a year's timeline has thousands of times. Each unit of a record has
     * a symbol, so nothing is left after its own.
     */
    private static String duration(long value, RecordUnit unit) {
        StringBuilder out = new StringBuilder();
        long stepMillis = millis(unit.size());
        long rest = value;
        for (int i = 0; rest > 0; i++) {
            long steps = DURATION_MILLIS[i] / stepMillis;
            long part = rest / steps;
            if (part > 0) {
                out.append(out.isEmpty() ? "" : " ").append(part).append(' ');
                out.append(DURATIONS.get(i).symbol());
            }
            rest %= steps;
        }
        return out.toString();
    }

    private static long millis(BigDecimal seconds) {
        return seconds.movePointRight(3).longValueExact();
    }
}
