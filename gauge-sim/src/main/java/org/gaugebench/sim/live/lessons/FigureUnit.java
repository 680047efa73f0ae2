package org.gaugebench.sim.live.lessons;

import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/** What a figure of a lesson is counted in, and how a class reads it. */
public enum FigureUnit {
    /** Parts per million, read as percent. */
    PERCENT("%", 4, 0, RecordUnit.PARTS_PER_MILLION),
    /** Parts per million, read as percentage points with their sign. */
    POINTS("%", 4, 1, RecordUnit.PARTS_PER_MILLION),
    /** Microampere-hours, read as Ah. */
    AMP_HOURS("Ah", 6, 1, RecordUnit.MICROAMP_HOURS),
    /** Microamps, read as A. */
    AMPS("A", 6, 1, RecordUnit.MICROAMPS),
    /** Microvolts, read as V. */
    VOLTS("V", 6, 2, RecordUnit.MICROVOLTS),
    /** Minutes, read as hours and minutes. */
    MINUTES("h", 0, 0, RecordUnit.MINUTES),
    /** Thousandths of a degree Celsius. */
    CELSIUS("°C", 3, 0, RecordUnit.MILLICELSIUS),
    /** A number of events. */
    TIMES("", 0, 0, null);

    private final String symbol;
    private final int shift;
    private final int usualDigits;
    private final @Nullable RecordUnit unit;

    FigureUnit(String symbol, int shift, int usualDigits, @Nullable RecordUnit unit) {
        this.symbol = symbol;
        this.shift = shift;
        this.usualDigits = usualDigits;
        this.unit = unit;
    }

    /** The symbol that stands beside a number; empty for a number of events. */
    public String symbol() {
        return symbol;
    }

    /** Decimal digits where a lesson asks for none of its own. */
    int usualDigits() {
        return usualDigits;
    }

    static FigureUnit of(RecordUnit unit) {
        for (FigureUnit each : values()) {
            if (each.unit == unit && each != POINTS) {
                return each;
            }
        }
        throw new IllegalArgumentException("no figure of a lesson is in " + unit);
    }

    /** Reads a value as a lesson file writes it, such as "80 %"; of events a bare number. */
    long parse(String text) throws QuantityException {
        if (unit != null) {
            return Quantity.parse(text, unit);
        }
        if (!text.matches("\\d{1,6}")) {
            throw new QuantityException("'" + text + "' is no whole number such as 3");
        }
        return Long.parseLong(text);
    }

    /** Hours and minutes, never days: "36 h" is what a gauge shows. */
    private static String hours(long minutes) {
        String rest = minutes % 60 + "\u202fmin";
        String hours = minutes / 60 + "\u202fh";
        return minutes < 60 ? rest : minutes % 60 == 0 ? hours : hours + " " + rest;
    }

    /** The bare number, with the decimal sign of the words and a true minus. */
    String number(long value, int digits, Words words) {
        return Figures.decimal(value, shift, digits)
                .replace(".", words.text("number.decimal-sign"))
                .replace("-", "\u2212");
    }

    /**
     * A value as a class reads it, with its unit.
     *
     * @param value in this unit's smallest step
     * @param digits after the decimal sign
     * @param words say the decimal sign and how points and times are written
     */
    String shown(long value, int digits, Words words) {
        if (this == MINUTES) {
            return hours(value);
        }
        String number = number(value, digits, words);
        return switch (this) {
            case TIMES -> number;
            case POINTS ->
                    words.text(
                            "number.points",
                            (number.matches(".*[1-9].*") && value > 0 ? "+" : "") + number);
            default -> number + "\u202f" + symbol;
        };
    }
}
