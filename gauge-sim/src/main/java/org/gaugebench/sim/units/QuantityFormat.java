package org.gaugebench.sim.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/** Writes the integers of records as people read them; what it writes parses back exactly. */
public final class QuantityFormat {
    private QuantityFormat() {}

    /**
     * Writes a quantity.
     *
     * @param value number of steps
     * @param unit of the steps
     * @return number and unit, such as "250 mA"; times in parts, such as "2 h 30 min"
     */
    public static String format(long value, RecordUnit unit) {
        BigDecimal amount = BigDecimal.valueOf(value).multiply(unit.size());
        if (unit.dimension() == Dimension.DURATION && value > 0) {
            return duration(amount);
        }
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

    private static String duration(BigDecimal seconds) {
        StringBuilder out = new StringBuilder();
        BigDecimal rest = seconds;
        for (UnitSymbol symbol : UnitSymbol.writtenFor(Dimension.DURATION)) {
            BigDecimal[] parts = rest.divideAndRemainder(symbol.size());
            if (parts[0].signum() != 0) {
                out.append(out.length() == 0 ? "" : " ");
                out.append(parts[0].toBigIntegerExact()).append(' ').append(symbol.symbol());
            }
            rest = parts[1];
        }
        return out.toString();
    }
}
