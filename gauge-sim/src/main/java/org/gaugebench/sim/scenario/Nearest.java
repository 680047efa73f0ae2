package org.gaugebench.sim.scenario;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the word that a misspelt one was probably meant to be. */
public final class Nearest {
    private static final int LONGEST = 60;

    private Nearest() {}

    /**
     * The nearest of some words.
     *
     * @return the word that needs the fewest letters changed, or null where none is near: at most a
     *     third of the letters, at least one
     */
    public static @Nullable String of(String word, Collection<String> candidates) {
        if (word.length() > LONGEST) {
            return null;
        }
        String best = null;
        int bestDistance = Math.max(1, word.length() / 3) + 1;
        for (String candidate : candidates) {
            int distance =
                    distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (distance < bestDistance) {
                best = candidate;
                bestDistance = distance;
            }
        }
        return best;
    }

    /** ", did you mean 'x'?" or the list of what could stand there. */
    static String hint(String word, Collection<String> candidates) {
        String near = of(word.replace('_', '-').replace(' ', '-'), candidates);
        if (near != null) {
            return "did you mean '" + near + "'?";
        }
        return candidates.isEmpty()
                ? "nothing can stand here"
                : "expected one of: " + String.join(", ", candidates);
    }

    /** Letters inserted, left out, changed, or swapped with their neighbour. */
    private static int distance(String a, String b) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] now = new int[b.length() + 1];
            now[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                now[j] = Math.min(Math.min(now[j - 1], last[j]) + 1, last[j - 1] + cost);
                if (i > 1
                        && j > 1
                        && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1)) {
                    now[j] = Math.min(now[j], beforeLast[j - 2] + 1);
                }
            }
            beforeLast = last;
            last = now;
        }
        return last[b.length()];
    }
}
