package org.gaugebench.sim.report;

import java.math.BigDecimal;
import java.util.List;
import org.gaugebench.sim.judge.Comparison;
import org.gaugebench.sim.judge.Divergence;
import org.gaugebench.sim.judge.Figures;

/** Where two runs first differ, and how far. */
public final class ComparisonText {
    private static final int NAME_WIDTH = 36;

    private ComparisonText() {}

    /**
     * Writes it.
     *
     * @param it what was compared
     * @param what a row of it is: "ticks" or "rows"
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(Comparison it, String what) {
        Page page = new Page();
        page.paragraph(0, "A  " + it.a()).paragraph(0, "B  " + it.b());
        List<Divergence> divergences = it.divergences();
        String compared =
                "%s %s compared, to %s"
                        .formatted(it.moments(), what, Figures.moment(it.endMillis()));
        if (divergences.isEmpty()) {
            return page.gap().paragraph(0, "The same throughout: " + compared).toString();
        }
        long first = divergences.get(0).firstMillis();
        page.gap().line("First difference at " + Figures.moment(first));
        for (Divergence each : divergences) {
            if (each.firstMillis() == first) {
                page.line("  " + each.name());
                page.line("    A %24s %s".formatted(each.firstA(), each.unit()).stripTrailing());
                page.line("    B %24s %s".formatted(each.firstB(), each.unit()).stripTrailing());
            }
        }
        page.gap().line("Worst differences, B less A, in the order in which they begin");
        for (Divergence each : divergences) {
            row(page, each);
        }
        page.gap();
        page.paragraph(
                0,
                (divergences.size() == 1
                                ? "1 figure differs; "
                                : divergences.size() + " figures differ; ")
                        + compared);
        return page.toString();
    }

    private static void row(Page page, Divergence each) {
        String name = each.name();
        if (name.length() > NAME_WIDTH) {
            page.line("  " + name);
            name = "";
        }
        BigDecimal worst = each.worst();
        String figure =
                worst == null
                        ? "other words"
                        : (worst.signum() > 0 ? "+" : "") + worst.toPlainString();
        String padded = name + " ".repeat(NAME_WIDTH - name.length());
        page.line("  " + padded + " " + (figure + " " + each.unit()).strip());
        page.line(
                "    from %s on, worst at %s"
                        .formatted(
                                Figures.moment(each.firstMillis()),
                                Figures.moment(each.worstMillis())));
    }
}
