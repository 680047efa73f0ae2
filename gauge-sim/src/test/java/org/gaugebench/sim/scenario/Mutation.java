package org.gaugebench.sim.scenario;

import java.util.List;
import java.util.Random;

/** Breaks a text in a few places, the same ones for the same seed. */
final class Mutation {
    private static final int MOST_MUTATIONS = 4;
    private static final int LONGEST_CUT = 12;

    private static final List<String> PIECES =
            List.of(
                    "{",
                    "}",
                    "[",
                    "]",
                    ":",
                    ": ",
                    "- ",
                    "\n",
                    "  ",
                    "\t",
                    "\"",
                    "'",
                    "#",
                    "&a ",
                    "*a",
                    "!!int ",
                    "|",
                    ">",
                    "%",
                    "@",
                    "---\n",
                    "...",
                    "? ",
                    "<<: ",
                    "~",
                    "null",
                    "99999999999999999999 A",
                    "1e999 V",
                    "-1 s",
                    "0 ms",
                    "9223372036854775807",
                    "106751991167 d",
                    "every: 1 ms",
                    "\u0000",
                    "\ud800",
                    "\u00b5",
                    "\u2028",
                    "vary: {battery.start: [1 %, 2 %]}\n",
                    "seeds: 1..10000\n",
                    "parts: [hut]\n",
                    "by: 1 h, ",
                    "");

    private Mutation() {}

    static String of(String text, long seed) {
        Random random = new Random(seed);
        StringBuilder broken = new StringBuilder(text);
        int mutations = 1 + random.nextInt(MOST_MUTATIONS);
        for (int i = 0; i < mutations; i++) {
            int at = random.nextInt(broken.length());
            int end = Math.min(broken.length(), at + random.nextInt(LONGEST_CUT));
            switch (random.nextInt(5)) {
                case 0 -> broken.delete(at, end);
                case 1 -> broken.insert(at, piece(random));
                case 2 -> broken.replace(at, end, piece(random));
                case 3 -> swapLine(broken, at, random.nextInt(broken.length()));
                default ->
                        broken.insert(random.nextInt(broken.length()), broken.substring(at, end));
            }
            if (broken.isEmpty()) {
                return "";
            }
        }
        return broken.toString();
    }

    private static String piece(Random random) {
        return PIECES.get(random.nextInt(PIECES.size()));
    }

    /** Puts the line of one place in front of the line of another: right words, wrong place. */
    private static void swapLine(StringBuilder text, int from, int to) {
        int start = text.lastIndexOf("\n", from) + 1;
        int end = text.indexOf("\n", from);
        String line = text.substring(Math.min(start, from), end < 0 ? text.length() : end) + "\n";
        text.insert(text.lastIndexOf("\n", to) + 1, line);
    }
}
