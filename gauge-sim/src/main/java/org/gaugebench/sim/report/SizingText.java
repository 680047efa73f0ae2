package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.ShuntChoice;
import org.gaugebench.sim.advice.SizingResult;
import org.jspecify.annotations.Nullable;

/** A sizing for people: the answer in one sentence, the evidence below. */
public final class SizingText {
    private static final int LABEL = 32;

    private final Page page = new Page();

    private SizingText() {}

    /**
     * Writes the answer.
     *
     * @param system as it was told
     * @param result what came of it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(OwnSystem system, SizingResult result) {
        return new SizingText().write(system, result);
    }

    private String write(OwnSystem system, SizingResult result) {
        page.paragraph(0, answer(result));
        for (String finding : result.findings()) {
            page.labelled(0, 3, "!", finding);
        }
        page.gap().line("What flows");
        row("for hours", amps(result.steadyAmps()) + ", the larger of in and out");
        row("for moments", amps(result.peakAmps()));
        row("taken in a day", hours(result.ampHoursPerDay()) + perLoad(system));
        page.gap().line("The shunt and its neighbours");
        page.line("                       drop and heat     one step    1 uV of offset makes");
        page.line("  shunt                for hours         of amps      in 30 d  of battery");
        for (ShuntChoice each : result.choices()) {
            page.line(line(each, each.rating().equals(result.chosen())));
        }
        page.paragraph(
                2,
                "A larger shunt stays cooler and sees less: the same microvolt is more current on"
                        + " it. It is chosen by the current, whatever the amp-hours.");
        battery(system, result);
        page.gap().line("What was assumed");
        for (String each : result.assumed()) {
            page.labelled(2, 2, "-", each);
        }
        page.gap().line("Take to your local code and a licensed person");
        page.paragraph(2, question(result));
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
        return page.toString();
    }

    /** The answer in one sentence. */
    public static String answer(SizingResult result) {
        ShuntChoice choice = result.choice();
        if (choice == null) {
            return "No usual shunt carries %s at peak.".formatted(amps(result.peakAmps()));
        }
        if (choice.fit() != ShuntChoice.Fit.FITS) {
            return result.proposed() == null
                    ? "Your shunt does not fit, and no usual one does."
                    : "Your shunt does not fit; take one of %s.".formatted(result.proposed());
        }
        return "%s: each microvolt of offset costs %s %% of your battery in a month."
                .formatted(
                        choice.rating().equals(result.proposed())
                                ? "Take a shunt of " + choice.rating()
                                : "Your shunt of " + choice.rating() + " fits",
                        figures(choice.microvoltPercentPerMonth()));
    }

    /** What this does not answer. */
    public static String question(SizingResult result) {
        return ("Which conductor and which fuse for %s for hours and %s for moments, at which"
                        + " length, and where does the main fuse stand? These figures size"
                        + " neither.")
                .formatted(amps(result.steadyAmps()), amps(result.peakAmps()));
    }

    private static String perLoad(OwnSystem system) {
        StringBuilder text = new StringBuilder();
        for (OwnLoad load : system.loads()) {
            text.append(text.isEmpty() ? ": " : ", ");
            text.append(Page.clean(load.name())).append(' ');
            text.append(hours(load.ampHoursPerDay()));
        }
        return text.toString();
    }

    private static String line(ShuntChoice each, boolean chosen) {
        String tooMuch = each.fit() == ShuntChoice.Fit.FITS ? "" : "  " + shortFit(each.fit());
        return String.format(
                Locale.ROOT,
                "%s %-18s %5.1f mV %6.2f W  %7s mA %7s Ah %6s %%%s",
                chosen ? " *" : "  ",
                each.rating(),
                each.steadyMillivolts(),
                each.steadyWatts(),
                figures(each.stepAmps() * 1e3),
                figures(each.microvoltAmpHoursPerMonth()),
                figures(each.microvoltPercentPerMonth()),
                tooMuch);
    }

    /** Why a shunt does not fit, in a word; empty where it does. */
    static String shortFit(ShuntChoice.Fit fit) {
        return switch (fit) {
            case FITS -> "";
            case TOO_WARM -> "warm";
            case OVERLOADED -> "small";
            case CLIPPED -> "clips";
        };
    }

    private void battery(OwnSystem system, SizingResult result) {
        page.gap().line("The battery");
        row("printed on it", hours(system.ampHours()));
        row(
                "to draw when coldest",
                "%s: %s of the charge, of it %s"
                        .formatted(
                                hours(result.usableAmpHours()),
                                percent(result.coldPart()),
                                percent(result.usualDepth())));
        if (result.fastPart() < 1) {
            row(
                    "in one go with everything on",
                    percent(result.fastPart())
                            + " of the printed charge; the rest comes after a pause");
        }
        row("days without charging", days(result.autonomyDays()));
        row(
                "printed for one such day",
                hours(result.neededAmpHours()) + " with 10 % margin, and at 80 % left when aged");
    }

    private static String days(double days) {
        return Double.isInfinite(days) ? "nothing draws" : String.format(Locale.ROOT, "%.1f", days);
    }

    private void row(String label, @Nullable String words) {
        page.labelled(2, LABEL, label, words == null ? "" : words);
    }

    private static String amps(double amps) {
        return figures(amps) + " A";
    }

    private static String hours(double ampHours) {
        return figures(ampHours) + " Ah";
    }

    private static String percent(double part) {
        return String.format(Locale.ROOT, "%.0f %%", part * 100);
    }

    /** Three figures: more would claim what nobody knows. */
    public static String figures(double value) {
        if (value == 0) {
            return "0";
        }
        int places = 2 - (int) Math.floor(Math.log10(Math.abs(value)));
        return String.format(Locale.ROOT, "%." + Math.max(0, places) + "f", value);
    }
}
