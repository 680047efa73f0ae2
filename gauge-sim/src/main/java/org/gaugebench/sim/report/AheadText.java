package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.advice.AfterMonth;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.Drift;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnSystem;

/** How long a count can be believed, for people: the answer first, the reasons below. */
public final class AheadText {
    private static final double DAYS_A_MONTH = 30;
    private static final long DAY_MILLIS = 86_400_000;

    private final Page page = new Page();

    private AheadText() {}

    /**
     * Writes the answer.
     *
     * @param system as it was told
     * @param result what came of it
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(OwnSystem system, MonthAheadResult result) {
        return new AheadText().write(system, result);
    }

    private String write(OwnSystem system, MonthAheadResult result) {
        page.paragraph(0, answer(result));
        if (!result.drifts().isEmpty()) {
            page.paragraph(0, decides(result));
        }
        start(result);
        page.gap().line("How far the figure leaves the truth");
        page.line("                                                       a day    in 30 days");
        for (Drift each : result.drifts()) {
            page.line(row(system, each));
        }
        page.line(
                String.format(
                        Locale.ROOT,
                        "  %-50s %+6.2f %%   %+7.1f %%",
                        "together, too much by",
                        result.tooHighPerDay(),
                        result.tooHighPerDay() * DAYS_A_MONTH));
        page.line(
                String.format(
                        Locale.ROOT,
                        "  %-50s %6s %%   %7s %%",
                        "and either way by up to",
                        points("±", result.eitherWayPerDay(), 2),
                        points("±", result.eitherWayPerDay() * DAYS_A_MONTH, 1)));
        evidence(result);
        after(result);
        list("The gauge that was run, as you told it", result.gauge());
        list("What was assumed", result.assumed());
        list("What you can find out, to know better", result.findOut());
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
        return page.toString();
    }

    /** The answer in one sentence. */
    public static String answer(MonthAheadResult result) {
        if (result.daysWithinTen() >= MonthAheadResult.MOST_DAYS) {
            return "Fully charge it and set it to 100 % once a year: the figure stays within 10"
                    + " points for as long.";
        }
        if (!result.isPutRight()) {
            return "Nothing puts this gauge right, a full charge neither: after %s it is 10 points"
                            .formatted(days(result.daysWithinTen()))
                    + " off, and it stays so.";
        }
        if (result.startPoints() >= 10) {
            return String.format(
                    Locale.ROOT,
                    "Do not go by its 100 %%: it shows up to %.0f points too much from the start.",
                    result.startPoints());
        }
        if (result.daysWithinTen() == 0) {
            return "The figure is more than 10 points off within a day: do not go by it until what"
                    + " decides that is changed.";
        }
        String five =
                result.daysWithinFive() == 0
                        ? "even a day is too long for 5"
                        : "every %s for 5".formatted(days(result.daysWithinFive()));
        String words =
                result.after().leftAtOwnFull() == null
                        ? "Fully charge it and set it to 100 %% at least every %s to stay within 10"
                                + " points (%s)."
                        : "Fully charge it, so that it sets itself to 100 %%, at least every %s to"
                                + " stay within 10 points (%s).";
        return words.formatted(days(result.daysWithinTen()), five);
    }

    /** What decides the answer and what to change first; empty where nothing drifts. */
    public static String decides(MonthAheadResult result) {
        if (result.drifts().isEmpty()) {
            return "";
        }
        Drift first = result.drifts().get(0);
        return "What decides it: %s. Change first: %s."
                .formatted(first.cause().words(), first.cause().remedy());
    }

    private static String days(int days) {
        return days == 1 ? "day" : days + " days";
    }

    private static String row(OwnSystem system, Drift each) {
        double perDay = each.ampHoursPerDay() / system.ampHours() * 100;
        return String.format(
                Locale.ROOT,
                "  %-50s %6s %%   %7s %%",
                shortened(each.cause().words()),
                points(each.isEitherWay() ? "±" : "+", perDay, 2),
                points(each.isEitherWay() ? "±" : "+", perDay * DAYS_A_MONTH, 1));
    }

    private static String points(String sign, double points, int places) {
        return sign + String.format(Locale.ROOT, "%." + places + "f", points);
    }

    private static String shortened(String words) {
        return words.replaceFirst(":.*", "");
    }

    private void evidence(MonthAheadResult result) {
        page.gap().line("The same days in a run");
        page.paragraph(2, run(result));
    }

    /** What a run of the same days gives. */
    public static String run(MonthAheadResult result) {
        Course.Hour hour = result.lastGoodDay();
        if (hour == null) {
            return "not run: the loads empty this battery within those days.";
        }
        String band =
                hour.betterLow() < 0
                        ? ""
                        : ", and says itself that the truth lies between %s and %s %%"
                                .formatted(whole(hour.betterLow()), whole(hour.betterHigh()));
        return String.format(
                Locale.ROOT,
                "After %s your gauge shows %.1f %% where %.1f %% are left. One beside it"
                        + " that is told its own current and the efficiency of this kind of"
                        + " battery shows %.1f %%%s.",
                hour.atMillis() == DAY_MILLIS ? "1 day" : hour.atMillis() / DAY_MILLIS + " days",
                hour.own() / 1e4,
                hour.truth() / 1e4,
                hour.better() / 1e4,
                band);
    }

    /** What is off before the first day, and how much worse it may be. */
    private void start(MonthAheadResult result) {
        if (result.startPoints() >= 0.5) {
            page.paragraph(
                    0,
                    String.format(
                            Locale.ROOT,
                            "Of these points %.1f are gone at once: %s.",
                            result.startPoints(),
                            why(result)));
        }
        int least = result.leastDaysWithinTen();
        if (least < result.daysWithinTen()) {
            page.paragraph(
                    0,
                    "Not all is known of this gauge: at the worst "
                            + (least == 0
                                    ? "it is too far off from the first day."
                                    : "it is every %s.".formatted(days(least)))
                            + " See below how to find out.");
        }
    }

    private static String why(MonthAheadResult result) {
        AfterMonth after = result.after();
        Long left = after.leftAtOwnFull();
        if (left != null && after.tooEarlyPoints() >= after.tooMuchAfterFull()) {
            return String.format(
                    Locale.ROOT, "it sets itself to 100 %% when %.0f %% are in", left / 1e4);
        }
        return after.tooMuchAfterFull() > 0.5
                ? "it counts on past 100 % while the charger ends"
                : "of the step of its amp-hours";
    }

    private void after(MonthAheadResult result) {
        AfterMonth after = result.after();
        page.gap().line("What comes after, in the same run");
        page.paragraph(
                2,
                String.format(
                        Locale.ROOT,
                        "Its wire off for a minute: your gauge shows %s where %.1f %% are left; the"
                                + " one beside it shows %s.",
                        shown(after.shownAfterOff()),
                        after.leftWhenOff() / 1e4,
                        shown(after.betterAfterOff())));
        Long left = after.leftAtOwnFull();
        Long better = after.leftAtBetterFull();
        if (left != null) {
            page.paragraph(
                    2,
                    String.format(
                            Locale.ROOT,
                            "On the charger: it sets itself to 100 %% when %.1f %% are in%s.",
                            left / 1e4,
                            after.ownFulls() == 0 ? "" : ", and in the month before as well"));
        }
        if (better != null) {
            page.paragraph(
                    2,
                    String.format(
                            Locale.ROOT,
                            "The one beside it sets itself when %.1f %% are in.",
                            better / 1e4));
        }
        if (after.tooMuchAfterFull() >= 0.5) {
            page.paragraph(
                    2,
                    String.format(
                            Locale.ROOT,
                            "After the full charge it shows %.1f points too much.",
                            after.tooMuchAfterFull()));
        }
        if (after.hoursAtLimitPart() > 0) {
            page.paragraph(
                    2,
                    String.format(
                            Locale.ROOT,
                            "Its hours stand at the longest that it can show for %.0f %% of the"
                                    + " time that it shows any.",
                            after.hoursAtLimitPart() * 100));
        }
    }

    private static String shown(long partsPerMillion) {
        return partsPerMillion == Readout.NOT_KNOWN
                ? "nothing"
                : String.format(Locale.ROOT, "%.1f %%", partsPerMillion / 1e4);
    }

    private static String whole(long partsPerMillion) {
        return String.format(Locale.ROOT, "%.0f", partsPerMillion / 1e4);
    }

    private void list(String heading, Iterable<String> lines) {
        boolean first = true;
        for (String each : lines) {
            if (first) {
                page.gap().line(heading);
                first = false;
            }
            page.labelled(2, 2, "-", each);
        }
    }
}
