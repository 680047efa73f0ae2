package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/**
 * How much room words take. The reader's fonts are not known here, so the widths are those of a
 * common plain type, in hundredths of its size, and a seventh more.
 */
final class PictureType {
    /** Fonts in the order of preference; the last one is on every machine. */
    static final String FAMILY = "Helvetica, Arial, 'Liberation Sans', sans-serif";

    private static final int NARROW = 28;
    private static final int SLIM = 36;
    private static final int USUAL = 56;
    private static final int CAPITAL = 72;
    private static final int WIDE = 90;
    private static final int MARGIN_PERCENT = 115;
    private static final int MINUS = 0x2212;

    private PictureType() {}

    /** Width of a text in the picture's units, for a size in the same. */
    static int width(String text, int size) {
        int hundredths = text.codePoints().map(PictureType::hundredths).sum();
        return (hundredths * size * MARGIN_PERCENT + 9_999) / 10_000;
    }

    private static int hundredths(int character) {
        if ("ijl.,:;|'!()I[] \u00a0".indexOf(character) >= 0) {
            return NARROW;
        }
        if ("frt-/\"".indexOf(character) >= 0) {
            return SLIM;
        }
        if ("mwMW%@".indexOf(character) >= 0) {
            return WIDE;
        }
        if (Character.isUpperCase(character)) {
            return CAPITAL;
        }
        return character < 0x250 || character == MINUS ? USUAL : 2 * USUAL;
    }

    /** The usual size, or a smaller one at which a text is no wider than that. */
    static int fitting(String text, int usualSize, int width) {
        int size = usualSize;
        while (size > 10 && width(text, size) > width) {
            size -= 5;
        }
        return size;
    }

    /**
     * Breaks text at spaces (not at no-break spaces), and a word that is too long for a line within
     * it.
     */
    static List<String> wrap(String words, int size, int width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : Page.clean(words).split(" +", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, size) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (width(line, size) > width) {
                int end = endWithin(line, size, width);
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines;
    }

    private static int endWithin(String word, int size, int width) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int next = word.offsetByCodePoints(end, 1);
            if (width(word.substring(0, next), size) > width) {
                break;
            }
            end = next;
        }
        return end;
    }
}
