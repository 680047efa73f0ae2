package org.gaugebench.sim.cli;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds what a misspelt word was meant to be. */
final class Nearest {
    private Nearest() {}

    /** The candidate with the fewest edits, if they are at most a third of its letters and one. */
    static Optional<String> to(String word, Collection<String> candidates) {
        String lower = word.toLowerCase(Locale.ROOT);
        return candidates.stream()
                .filter(c -> distance(lower, c.toLowerCase(Locale.ROOT)) <= c.length() / 3 + 1)
                .min(
                        Comparator.comparingInt(
                                        (String c) -> distance(lower, c.toLowerCase(Locale.ROOT)))
                                .thenComparing(Comparator.naturalOrder()));
    }

    /** Insertions, deletions, replacements and swaps of neighbours between two words. */
    static int distance(String a, String b) {
        int[][] edits = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                edits[i][j] = i == 0 ? j : j == 0 ? i : step(edits, a, b, i, j);
            }
        }
        return edits[a.length()][b.length()];
    }

    private static int step(int[][] edits, String a, String b, int i, int j) {
        int replaced = edits[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int best = Math.min(replaced, Math.min(edits[i - 1][j], edits[i][j - 1]) + 1);
        boolean swapped =
                i > 1
                        && j > 1
                        && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(best, edits[i - 2][j - 2] + 1) : best;
    }
}
