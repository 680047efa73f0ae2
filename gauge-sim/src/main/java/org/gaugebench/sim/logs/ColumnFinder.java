package org.gaugebench.sim.logs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/** Finds the named columns in a header, and says which name was probably meant. */
final class ColumnFinder {
    private final String file;
    private final int line;
    private final List<String> header;
    private final List<LogProblem> problems = new ArrayList<>();

    ColumnFinder(String file, int line, List<String> header) {
        this.file = file;
        this.line = line;
        this.header = header.stream().map(String::strip).toList();
    }

    /** Every name that was not found, or found twice. */
    List<LogProblem> problems() {
        return problems;
    }

    /** Position of a column from 0, or -1 with a problem noted; -1 without one for null. */
    int find(String option, @Nullable String name) {
        if (name == null) {
            return -1;
        }
        int position = header.indexOf(name);
        if (position < 0) {
            problems.add(new LogProblem(file, line, 0, notFound(option, name)));
        } else if (header.lastIndexOf(name) != position) {
            problems.add(
                    new LogProblem(
                            file, line, 0, option + ": the column '" + name + "' is there twice"));
        }
        return position;
    }

    private String notFound(String option, String name) {
        if (header.stream().allMatch(c -> c.isEmpty() || TimeCells.isTime(c))) {
            return option
                    + ": the first row must name the columns, such as time_s,current_A; it holds "
                    + quoted(header);
        }
        String message = option + ": no column '" + name + "'; the columns are " + quoted(header);
        String nearest = nearest(name);
        return nearest == null ? message : message + "; did you mean '" + nearest + "'?";
    }

    private static String quoted(List<String> names) {
        return names.stream()
                .limit(20)
                .map(n -> "'" + Texts.shortened(n) + "'")
                .collect(Collectors.joining(", "));
    }

    /** The name with the fewest changed letters, if fewer than half of them changed. */
    private @Nullable String nearest(String name) {
        String best = null;
        int fewest = (Math.max(name.length(), 2) + 1) / 2 + 1;
        for (String candidate : header) {
            int edits = edits(name.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (!candidate.isEmpty() && edits < fewest) {
                fewest = edits;
                best = candidate;
            }
        }
        return best;
    }

    /** Edit distance of Levenshtein. */
    private static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substituted, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
