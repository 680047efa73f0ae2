package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.advice.SymptomResult;

/** What may be behind a symptom, as text: the answer first, then each cause with its check. */
public final class SymptomText {
    private SymptomText() {}

    /**
     * Writes the answer.
     *
     * @param result what came of it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(SymptomResult result) {
        Page page = new Page();
        page.paragraph(0, result.answer());
        if (!result.causes().isEmpty()) {
            page.gap().line("What may be behind it, the likeliest first");
        }
        int place = 1;
        int width = result.causes().size() < 10 ? 3 : 4;
        for (SymptomResult.Ranked each : result.causes()) {
            // Figures end below each other.
            int label = place < 10 ? 3 : 4;
            page.labelled(
                    2 + width - label,
                    label,
                    place++ + ".",
                    each.cause().words() + ": " + each.size());
            page.paragraph(2 + width, "Check: " + sentence(each.cause().check()));
            page.paragraph(2 + width, "Run: " + each.cause().scenario() + ".yaml");
        }
        list(page, "What was assumed", result.assumed());
        list(page, "What to do next, to know better", result.findOut());
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
        return page.toString();
    }

    /** Some checks are questions already. */
    private static String sentence(String words) {
        return words.endsWith("?") ? words : words + ".";
    }

    private static void list(Page page, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            page.gap().line(heading);
        }
        for (String each : lines) {
            page.labelled(2, 2, "-", each);
        }
    }
}
