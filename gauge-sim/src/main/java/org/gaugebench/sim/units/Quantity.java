package org.gaugebench.sim.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exact quantity.
 *
 * @param amount in the dimension's base unit: A, V, Ohm, W, Ah, s, °C, Hz, parts of one
 * @param dimension what it measures
 */
public record Quantity(BigDecimal amount, Dimension dimension) {
    /** Eighteen digits on either side are beyond any quantity here and keep the work bounded. */
    private static final Pattern PART =
            Pattern.compile("([+-]?\\d{1,18}(?:\\.\\d{1,18})?) *([A-Za-z%°][A-Za-z%°/]{0,19}) *");

    private static final int LONGEST_TEXT = 80;

    /**
     * Reads a quantity: a decimal number, its unit, and for times several such parts, each smaller
     * than the one before ("2 h 30 min").
     *
     * @param text as written
     * @param dimension what it has to measure
     * @return the exact quantity
     * @throws QuantityException naming what was expected, with an example, and what was found
     */
    public static Quantity parse(String text, Dimension dimension) throws QuantityException {
        String plain = plain(text);
        if (plain.isEmpty()) {
            throw new QuantityException(expected(dimension) + ", but there is nothing");
        }
        if (plain.length() > LONGEST_TEXT) {
            throw new QuantityException(expected(dimension) + found(text) + ", which is too long");
        }
        Matcher part = PART.matcher(plain);
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal previousSize = null;
        int end = 0;
        while (end < plain.length()) {
            if (!part.find(end) || part.start() != end) {
                throw new QuantityException(expected(dimension) + found(text) + hint(plain));
            }
            UnitSymbol unit = unit(part.group(2), dimension, text);
            if (previousSize != null) {
                checkFurtherPart(dimension, text, part.group(1), unit, previousSize);
            }
            if (part.end() < plain.length() && !Character.isDigit(part.group(1).charAt(0))) {
                throw new QuantityException(
                        expected(dimension) + found(text) + "; a sum of parts takes no sign");
            }
            sum = sum.add(new BigDecimal(part.group(1)).multiply(unit.size()));
            previousSize = unit.size();
            end = part.end();
        }
        return new Quantity(sum, dimension);
    }

    /**
     * Reads a quantity straight into a record's unit.
     *
     * @param text as written
     * @param unit that the record holds
     * @return the exact number of steps
     * @throws QuantityException as {@link #parse(String, Dimension)} and {@link #in(RecordUnit)}
     */
    public static long parse(String text, RecordUnit unit) throws QuantityException {
        return parse(text, unit.dimension()).in(unit);
    }

    /**
     * The quantity as a whole number of a record's unit.
     *
     * @param unit of the same dimension
     * @return the exact number of steps
     * @throws QuantityException if the quantity lies between two steps or beyond 64 bits
     */
    public long in(RecordUnit unit) throws QuantityException {
        if (unit.dimension() != dimension) {
            throw new QuantityException(
                    expected(unit.dimension()) + ", but found " + dimension.phrase());
        }
        if (amount.remainder(unit.size()).signum() != 0) {
            throw new QuantityException(
                    shown(unit) + " is finer than " + unit.step() + ", the smallest step here");
        }
        BigDecimal steps = amount.divide(unit.size());
        if (steps.toBigInteger().abs().bitLength() > Long.SIZE - 1) {
            throw new QuantityException(shown(unit) + " is too large");
        }
        return steps.longValueExact();
    }

    private String shown(RecordUnit unit) {
        // Times are shown in seconds, everything else in its largest unit, which is the base unit.
        UnitSymbol largest = UnitSymbol.writtenFor(unit.dimension()).get(0);
        boolean time = unit.dimension() == Dimension.DURATION;
        String symbol = time ? "s" : largest.symbol();
        BigDecimal size = time ? BigDecimal.ONE : largest.size();
        return amount.divide(size, MathContext.DECIMAL128).stripTrailingZeros().toPlainString()
                + " "
                + symbol;
    }

    private static void checkFurtherPart(
            Dimension dimension, String text, String number, UnitSymbol unit, BigDecimal before)
            throws QuantityException {
        if (dimension != Dimension.DURATION) {
            throw new QuantityException(expected(dimension) + found(text) + ", which is several");
        }
        if (!Character.isDigit(number.charAt(0)) || unit.size().compareTo(before) >= 0) {
            throw new QuantityException(
                    expected(dimension) + found(text) + "; each part is smaller than the last");
        }
    }

    private static UnitSymbol unit(String symbol, Dimension dimension, String text)
            throws QuantityException {
        UnitSymbol unit = UnitSymbol.of(symbol);
        if (unit == null) {
            UnitSymbol near = UnitSymbol.ofAnyCase(symbol, dimension);
            throw new QuantityException(
                    expected(dimension)
                            + found(text)
                            + "; there is no unit '"
                            + symbol
                            + "' here"
                            + (near == null ? "" : ", did you mean '" + near.symbol() + "'?"));
        }
        if (unit.dimension() != dimension) {
            throw new QuantityException(
                    expected(dimension) + found(text) + ", which is " + unit.dimension().phrase());
        }
        return unit;
    }

    private static String hint(String plain) {
        if (plain.matches("[+-]?\\d+(\\.\\d+)?")) {
            return " without a unit";
        }
        if (plain.matches("[+-]?\\d+,\\d.*")) {
            return "; the decimal sign is a point";
        }
        return "";
    }

    private static String expected(Dimension dimension) {
        return "expected " + dimension.phrase() + " such as " + dimension.example();
    }

    private static String found(String text) {
        return ", but found '" + Texts.shortened(text) + "'";
    }

    /** One spelling for micro, ohm, minus and spaces. */
    private static String plain(String text) {
        return text.replace('\u00b5', 'u')
                .replace('\u03bc', 'u')
                .replace("\u03a9", "Ohm")
                .replace("\u2126", "Ohm")
                .replace('\u2212', '-')
                .replace('\u00a0', ' ')
                .replace('\u2009', ' ')
                .replace('\u202f', ' ')
                .replaceAll(" {0,40}/ {0,40}", "/")
                .trim();
    }
}
