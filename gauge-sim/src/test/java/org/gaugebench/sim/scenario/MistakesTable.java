package org.gaugebench.sim.scenario;

import java.util.Locale;

/** The table of mistakes of the page on the format, made from the enumeration. */
final class MistakesTable {
    private MistakesTable() {}

    static String markdown() {
        StringBuilder table =
                new StringBuilder(
                        """
                        | mistake | stage | such a gauge | so that |
                        |---|---|---|---|
                        """);
        for (Mistake mistake : Mistake.values()) {
            String stage = mistake.family().name().toLowerCase(Locale.ROOT).replace('_', ' ');
            table.append("| `").append(mistake.key()).append("` | ").append(stage);
            table.append(mistake.family().isSingle() ? " (one at most)" : "");
            table.append(" | ").append(mistake.sentence());
            table.append(" | ").append(mistake.consequence()).append(" |\n");
        }
        return table.toString();
    }
}
