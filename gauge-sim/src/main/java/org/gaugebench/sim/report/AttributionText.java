package org.gaugebench.sim.report;

import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.rig.Cause;

/** The error split by cause as a person reads it: plain causes first, then all of them. */
public final class AttributionText {
    private static final String ROW = "  %-52s%11s%11s";

    /** 3.6e12 nC are an ampere-hour; half a tenth of a microampere-hour is not shown. */
    private static final long NANOCOULOMBS_PER_MICROAMP_HOUR = 3_600_000;

    private AttributionText() {}

    /**
     * Writes a table for each moment.
     *
     * @param attribution the error split
     * @param ink for a terminal or for paper
     * @return lines of at most {@value Page#WIDTH} columns, an empty one first
     */
    public static String of(Attribution attribution, Ink ink) {
        Page page = new Page();
        for (Split split : attribution.splits()) {
            page.gap()
                    .line(
                            ink.heading(
                                    "Where the error of %s comes from, at %s"
                                            .formatted(
                                                    Page.clean(attribution.gauge()),
                                                    Figures.moment(split.atMillis()))));
            if (split.known()) {
                table(page, split);
            } else {
                page.paragraph(2, "It shows no charge, so there is nothing to split.");
            }
        }
        return page.toString();
    }

    private static void table(Page page, Split split) {
        page.line(ROW.formatted("", "Ah", "points"));
        row(page, "shown minus true", split.errorNanocoulombs(), split.errorPartsPerMillion());
        page.line("  of this");
        for (Cause cause : Attribution.PLAIN) {
            row(page, cause, split);
        }
        row(page, "everything else", split.elseNanocoulombs(), split.elsePartsPerMillion());
        page.line("  all causes, each taken away together with those above it");
        for (Cause cause : Cause.values()) {
            row(page, cause, split);
        }
        page.paragraph(
                2,
                "The parts add up to the error exactly; printed figures are rounded. What two"
                        + " causes do together stands with the upper one: another order would"
                        + " share it differently.");
    }

    private static void row(Page page, Cause cause, Split split) {
        row(page, cause.words(), split.nanocoulombs(cause), split.partsPerMillion(cause));
    }

    private static void row(Page page, String words, long nanocoulombs, long partsPerMillion) {
        long microampHours =
                StrictMath.round((double) nanocoulombs / NANOCOULOMBS_PER_MICROAMP_HOUR);
        page.line(
                ROW.formatted(
                        "  " + words,
                        signed(Figures.decimal(microampHours, 6, 4)),
                        signed(Figures.decimal(partsPerMillion, 4, 2))));
    }

    private static String signed(String figure) {
        return figure.startsWith("-") || figure.matches("[0.]+") ? figure : "+" + figure;
    }
}
