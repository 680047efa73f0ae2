package org.gaugebench.sim.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An explanation read back from its text, with lines that were broken joined again. */
record PrintedPage(List<Line> lines) {
    /** Two columns, and thirty for the label. */
    private static final int TEXT_AT = 32;

    private static final Pattern FIGURE =
            Pattern.compile("(?:(.*) = )?(-?\\d+)(?: ([^\\[]*?))?(?: \\[([A-Z0-9_]+)])?");
    private static final Pattern COMPARISON = Pattern.compile("(.*): (yes|no)");

    /**
     * A line with a figure.
     *
     * @param label what it is
     * @param calculation how it came about; empty where it is just there
     * @param result the figure, or yes or no
     * @param register that holds the same, or empty
     */
    record Line(String label, String calculation, String result, String register) {}

    static PrintedPage of(String page) {
        List<String> joined = new ArrayList<>();
        for (String line : page.lines().toList()) {
            if (line.startsWith(" ".repeat(TEXT_AT))) {
                int last = joined.size() - 1;
                joined.set(last, joined.get(last) + " " + line.strip());
            } else {
                joined.add(line);
            }
        }
        List<Line> lines = new ArrayList<>();
        for (String line : joined) {
            if (line.startsWith("  ") && line.length() > TEXT_AT) {
                read(line.substring(2, TEXT_AT).strip(), line.substring(TEXT_AT), lines);
            }
        }
        return new PrintedPage(lines);
    }

    private static void read(String label, String text, List<Line> lines) {
        Matcher comparison = COMPARISON.matcher(text);
        if (comparison.matches() && text.matches(".*[<>].*")) {
            lines.add(new Line(label, comparison.group(1), comparison.group(2), ""));
            return;
        }
        Matcher figure = FIGURE.matcher(text);
        if (figure.matches()) {
            String calculation = figure.group(1) == null ? "" : figure.group(1);
            String register = figure.group(4) == null ? "" : figure.group(4);
            if (!calculation.isEmpty() || !register.isEmpty()) {
                lines.add(new Line(label, calculation, figure.group(2), register));
            }
        }
    }
}
