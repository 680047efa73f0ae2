package org.gaugebench.sim.scenario;

import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/**
 * Lines of a resolved scenario. The same calls make the text for people, with marks and prose, and
 * the canonical text that the digest is taken over, without either.
 */
final class Lines {
    private static final String INDENT = "  ";

    private final StringBuilder out = new StringBuilder();
    private final boolean canonical;
    private int depth;

    Lines(boolean canonical) {
        this.canonical = canonical;
    }

    void open(String key) {
        line(key + ":");
        depth++;
    }

    /** Opens a mapping inside a list. */
    void openItem(String key, String value) {
        line("- " + key + ": " + value);
        depth++;
    }

    void close() {
        depth--;
    }

    void item(String text) {
        line("- " + text);
    }

    void value(String key, String value) {
        line(key + ": " + value);
    }

    void value(String key, String value, String usual) {
        line(key + ": " + value + (value.equals(usual) && !canonical ? "  # default" : ""));
    }

    /**
     * A value that is written for the digest only where it is not the usual one: a key that joins
     * the language later leaves the digests of older files alone.
     */
    void unlessUsual(String key, String value, String usual) {
        if (!canonical || !value.equals(usual)) {
            value(key, value, usual);
        }
    }

    void quantity(String key, RecordUnit unit, long value, long usual) {
        value(key, QuantityFormat.format(value, unit), QuantityFormat.format(usual, unit));
    }

    /** A quantity for which zero is the word "none". */
    void quantityOrNone(String key, RecordUnit unit, long value, long usual) {
        value(key, orNone(unit, value), orNone(unit, usual));
    }

    private static String orNone(RecordUnit unit, long value) {
        return value == 0 ? "none" : QuantityFormat.format(value, unit);
    }

    /** Words for people, which the digest does not see. */
    void prose(String key, String text) {
        if (!canonical) {
            value(key, quoted(text));
        }
    }

    boolean isCanonical() {
        return canonical;
    }

    private void line(String text) {
        out.append(INDENT.repeat(depth)).append(text).append('\n');
    }

    /** A text in double quotes, with everything escaped that would not stand in them. */
    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints()
                .forEach(
                        c -> {
                            switch (c) {
                                case '"' -> quoted.append("\\\"");
                                case '\\' -> quoted.append("\\\\");
                                case '\n' -> quoted.append("\\n");
                                case '\r' -> quoted.append("\\r");
                                case '\t' -> quoted.append("\\t");
                                default -> appendPrintable(quoted, c);
                            }
                        });
        return quoted.append('"').toString();
    }

    private static void appendPrintable(StringBuilder quoted, int c) {
        boolean ascii = c >= 0x20 && c < 0x7f;
        boolean letter = c >= 0xa0 && c < 0xd800 && c != 0x2028 && c != 0x2029;
        boolean printable = ascii || letter;
        if (printable) {
            quoted.appendCodePoint(c);
        } else {
            quoted.append(String.format("\\U%08X", c));
        }
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
