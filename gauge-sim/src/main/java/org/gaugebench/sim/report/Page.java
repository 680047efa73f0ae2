package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A page of at most {@value #WIDTH} columns. A single word wider than that, such as a long path,
 * stays whole so that it can be copied.
 */
public final class Page {
    /** Columns of a page. */
    public static final int WIDTH = 80;

    private final StringBuilder text = new StringBuilder();

    /** Creates an empty page. */
    public Page() {}

    /** Adds a line as it is. */
    public Page line(String line) {
        text.append(line).append('\n');
        return this;
    }

    /** Adds an empty line. */
    public Page gap() {
        text.append('\n');
        return this;
    }

    /** Adds text broken between words, every line indented by as many spaces. */
    public Page paragraph(int indent, String words) {
        for (String line : wrap(clean(words), WIDTH - indent)) {
            text.append(" ".repeat(indent)).append(line).append('\n');
        }
        return this;
    }

    /**
     * Adds a label and text broken between words beside it.
     *
     * @param indent columns before the label
     * @param labelWidth columns for the label and the space after it
     * @param label shown as it is; may carry ink
     * @param shownWidth columns that the label takes on a screen
     * @param words the text
     */
    public Page labelled(int indent, int labelWidth, String label, int shownWidth, String words) {
        int textAt = indent + labelWidth;
        List<String> lines = wrap(clean(words), WIDTH - textAt);
        text.append(" ".repeat(indent)).append(label);
        text.append(" ".repeat(Math.max(1, labelWidth - shownWidth)));
        text.append(lines.get(0)).append('\n');
        for (String line : lines.subList(1, lines.size())) {
            text.append(" ".repeat(textAt)).append(line).append('\n');
        }
        return this;
    }

    /** Adds a label without ink and text beside it. */
    public Page labelled(int indent, int labelWidth, String label, String words) {
        return labelled(indent, labelWidth, clean(label), clean(label).length(), words);
    }

    private static List<String> wrap(String words, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split("\\s+", -1)) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /**
     * Text from a file made safe to print: control characters, which could move a terminal's cursor
     * or change its colours, become spaces.
     */
    public static String clean(String untrusted) {
        return untrusted.replaceAll("[\\p{Cc}\\p{Cf}]+", " ").strip();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
