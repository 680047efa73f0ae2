package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.Changes;
import org.gaugebench.sim.advice.ChangesResult;
import org.gaugebench.sim.advice.CheckPlan;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.units.ShuntRating;

/** The parts of the sheet for the time after: checks, what to look at, store, doubt. */
final class SheetUse {
    private static final int[] LATER_DAYS = {1, 7, 30};
    private static final int[] STORED_DAYS = {28, 84};
    private static final double FREEZING = 0;

    private final SheetPaper paper;
    private final HtmlText html;
    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final MonthAheadResult ahead;

    SheetUse(SheetPaper paper, MonthAheadResult ahead) {
        this.paper = paper;
        html = paper.html();
        system = paper.system();
        gauge = paper.gauge();
        shunt = paper.shunt();
        this.ahead = ahead;
    }

    // ---- Checks

    void checks() {
        paper.open("checks", "Checks with a meter");
        html.markup(
                "<p>Write into the empty columns. Amps into the battery are plus, amps out of it"
                        + " minus.</p>");
        html.markup("<table class=\"ledger checks\"><thead><tr><th scope=\"col\">check</th>");
        html.markup("<th scope=\"col\">by the meter</th><th scope=\"col\">on the gauge</th>");
        html.markup("</tr></thead><tbody>");
        for (CheckPlan.Line each : CheckPlan.of(system, gauge, shunt)) {
            html.markup(
                    "<tr><th scope=\"row\">%s<code>%s</code><span class=\"why\">%s</span>"
                            + "<span class=\"why\"><b>Good:</b> %s.</span>"
                            + "<span class=\"why\"><b>Blind:</b> %s</span></th>",
                    each.check().words(),
                    each.check().key(),
                    each.how(),
                    each.good(),
                    each.blind());
            blank(each.check().meterExample());
            blank(each.check().gaugeExample());
            html.markup("</tr>");
        }
        html.markup("</tbody></table>");
        html.markup(
                "<p class=\"small\">Typed back in, as lines such as"
                        + " <code>scale-working,-9.8 A,-9.9 A</code> under the head"
                        + " <code>check,meter,gauge</code>, they give a verdict:"
                        + " <code>gauge-sim verdict my-checks.csv</code>.</p>");
        paper.close();
    }

    private void blank(String example) {
        if (example.isEmpty()) {
            html.markup("<td class=\"none\"><span class=\"soft\">nothing</span></td>");
        } else {
            html.markup(
                    "<td class=\"blank\"><span class=\"soft small\">such as %s</span></td>",
                    example);
        }
    }

    // ---- Later

    void later() {
        paper.open("later", "What to look at later");
        html.markup("<table class=\"ledger\"><caption>Counted from a full charge, set to 100 %");
        html.markup("then and never since</caption><thead><tr>");
        html.markup("<th scope=\"col\">after</th>");
        html.markup("<th scope=\"col\" class=\"figure\">truth, points from the figure</th>");
        html.markup("<th scope=\"col\" class=\"figure\">in a run: shown, left</th></tr></thead>");
        html.markup("<tbody>");
        for (int days : LATER_DAYS) {
            html.markup(
                    "<tr><th scope=\"row\">%s</th><td class=\"figure\">%s</td>"
                            + "<td class=\"figure\">%s</td></tr>",
                    days == 1 ? "a day" : days == 7 ? "a week" : "a month",
                    range(days),
                    inTheRun(days));
        }
        html.markup("</tbody></table>");
        double perDay = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
        List<String> lines = new ArrayList<>();
        lines.add(
                SheetPaper.text(
                        "After a day: minus while something draws, plus while the charger gives;"
                                + " and a day without charging takes about %s, which is %s.",
                        SheetFigures.ampHours(perDay),
                        SheetFigures.points(perDay / system.ampHours() * 100)));
        lines.add(
                "After a week: tighten every joint again. Has it come to 100 %, and were the volts"
                        + " and the amps then those of the first charge?");
        lines.add(
                SheetPaper.text(
                        "After a month: the zero test again; and was it fully charged at least"
                                + " every %s?",
                        days(ahead.daysWithinTen())));
        paper.list("ul", lines);
        paper.close();
    }

    /** True less shown after so many days, from the lowest to the highest. */
    private String range(int days) {
        double low = -(ahead.tooHighPerDay() + ahead.eitherWayPerDay()) * days;
        double high = (ahead.eitherWayPerDay() - ahead.tooHighPerDay()) * days;
        if (low <= -100) {
            return "anything";
        }
        String from = SheetFigures.points(low).replaceFirst("\\D+$", "");
        String to = SheetFigures.points(high).replaceFirst("\\D+$", "");
        return from + " to " + (high > 0 ? "+" : "") + to;
    }

    private String inTheRun(int days) {
        if (ahead.course().size() <= days * 24) {
            return "flat before";
        }
        Course.Hour hour = ahead.course().get(days * 24);
        return SheetFigures.percent(hour.own() / 1e4)
                + ", "
                + SheetFigures.percent(hour.truth() / 1e4);
    }

    private static String days(int days) {
        return days == 0 ? "some hours" : days == 1 ? "day" : days + " days";
    }

    private static String since(int days) {
        return days == 1 ? "a day" : days(days);
    }

    // ---- Store

    void storage() {
        paper.open("storage", "In store");
        List<String> lines = new ArrayList<>();
        lines.add(
                system.chemistry().isLeadAcid()
                        ? "Store it full, and charge it again before it falls below 75 %."
                        : "Store it at about 60 %, everything off, and never let it run empty.");
        lines.add("The gauge's fused supply wire off too, first of all.");
        for (int days : STORED_DAYS) {
            ChangesResult result = changed(OwnChange.What.STORED, days);
            lines.add(result.answer());
        }
        ChangesResult last = changed(OwnChange.What.STORED, STORED_DAYS[0]);
        for (ChangesResult.Figure each : last.figures()) {
            if (each.words().startsWith("until ") || each.words().startsWith("stored so long")) {
                lines.add(
                        Character.toUpperCase(each.words().charAt(0))
                                + each.words().substring(1)
                                + ": "
                                + ChangesText.value(each)
                                + ".");
            }
        }
        paper.assumed().addAll(last.assumed());
        paper.list("ul", lines);
        paper.close();
    }

    private ChangesResult changed(OwnChange.What what, double amount) {
        return Changes.of(system, gauge, shunt, ahead, new OwnChange(what, amount, null));
    }

    // ---- Doubt

    void distrust() {
        paper.open("distrust", "When not to believe the figure");
        List<String> lines = new ArrayList<>();
        lines.add(
                SheetPaper.text(
                        "More than %s after the last full charge it may be more than 10 points"
                                + " off; more than 5 after %s.",
                        since(ahead.daysWithinTen()), since(ahead.daysWithinFive())));
        lines.add(changed(OwnChange.What.WIRE_OFF, 1).answer());
        Double told = system.coldestCelsius();
        OwnChange cold = new OwnChange(OwnChange.What.WINTER, told == null ? FREEZING : told, null);
        // Colder and warmer than that nothing is worked out.
        double celsius = Math.max(cold.least(), Math.min(cold.most(), cold.amount()));
        lines.add(changed(OwnChange.What.WINTER, celsius).answer());
        lines.add(changed(OwnChange.What.BATTERY_SWAPPED, system.ampHours()).answer());
        lines.add(
                "When it came to 100 % while the amps were still large: see the first charge for"
                        + " what that costs.");
        lines.add(
                "For some hours after a large load: warm joints at the shunt make small amps look"
                        + " larger or smaller than they are.");
        if (gauge.pastFull() == OwnersGauge.PastFull.HIDES_MORE) {
            lines.add(
                    "After days at 100 %: it counts on behind that, and stays at 100 % too long"
                            + " when you draw.");
        }
        if (ahead.drifts().isEmpty()) {
            lines.add("Never by the days alone: nothing adds up here.");
        } else {
            lines.add(
                    SheetPaper.text(
                            "What makes it worst here is %s. Change first: %s.",
                            ahead.drifts().get(0).cause().words(),
                            ahead.drifts().get(0).cause().remedy()));
        }
        paper.list("ul", lines);
        paper.close();
    }
}
