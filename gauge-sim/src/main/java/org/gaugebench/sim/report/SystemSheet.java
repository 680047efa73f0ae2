package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.Set;
import org.gaugebench.sim.advice.MonthAhead;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.units.ShuntRating;

/**
 * One sheet for one system, to be printed or kept on a telephone: what to type in, how to wire it,
 * the first charge, checks with blank columns, what to look at later, and when not to believe it.
 * The file needs nothing else and asks nobody; the same system gives the same bytes.
 */
public final class SystemSheet {
    private SystemSheet() {}

    /**
     * Writes the sheet.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param details what else was told
     * @param version of this program
     * @return the text of an HTML file
     * @throws IllegalArgumentException if no usual shunt carries the system's currents and none is
     *     there
     */
    public static String html(
            OwnSystem system, OwnersGauge gauge, SheetDetails details, String version) {
        SizingResult sizing = Sizing.of(system);
        ShuntRating shunt = sizing.chosen();
        if (shunt == null) {
            throw new IllegalArgumentException("no usual shunt carries these currents");
        }
        MonthAheadResult ahead = MonthAhead.of(system, gauge, shunt);
        HtmlText html = new HtmlText();
        head(html, title(details), version);
        html.markup("<main class=\"system-sheet\">");
        html.markup("<section class=\"sheet\">");
        html.markup("<h1>%s</h1>", title(details));
        html.markup("<p class=\"verdict\">%s</p>", AheadText.answer(ahead));
        facts(html, system, sizing, shunt);
        html.markup("</section>");
        SheetPaper paper = new SheetPaper(html, system, gauge, shunt);
        SheetWork work = new SheetWork(paper, details, sizing);
        work.before();
        work.settings();
        work.wiring();
        work.firstCharge();
        SheetUse use = new SheetUse(paper, ahead);
        use.checks();
        use.later();
        use.storage();
        use.distrust();
        work.cautions();
        Set<String> assumed = new LinkedHashSet<>(sizing.assumed());
        assumed.addAll(ahead.assumed());
        assumed.addAll(details.assumed(system));
        assumed.addAll(paper.assumed());
        paper.open("assumed", "What was assumed");
        paper.list("ul", new ArrayList<>(assumed));
        if (!ahead.findOut().isEmpty()) {
            html.markup("<h3>What you can find out, to know better</h3>");
            paper.list("ul", ahead.findOut());
        }
        html.markup("<details class=\"screen-only\"><summary>The days behind it, as a file to run");
        html.markup("</summary><pre tabindex=\"0\">%s</pre></details>", ahead.scenario());
        paper.close();
        html.markup("</main>");
        html.markup("<footer class=\"soft small screen-only\">");
        html.markup("<p>Made by gauge-sim %s. This file needs no network.</p></footer>", version);
        return html.markup("</body>").markup("</html>").toString();
    }

    private static String title(SheetDetails details) {
        return details.name().isBlank() ? "The sheet of my system" : details.name();
    }

    private static void head(HtmlText html, String title, String version) {
        String style =
                PageAsset.LOOK.text()
                        + "\n"
                        + PageAsset.text(SystemSheet.class, "system-sheet.css");
        html.markup("<!DOCTYPE html>").markup("<html lang=\"en-GB\">").markup("<head>");
        html.markup("<meta charset=\"utf-8\">");
        html.markup(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';"
                        + " base-uri 'none'; form-action 'none'; style-src "
                        + HtmlText.source(style)
                        + "\">");
        html.markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        html.markup("<meta name=\"color-scheme\" content=\"light dark\">");
        html.markup("<meta name=\"generator\" content=\"gauge-sim %s\">", version);
        html.markup("<title>%s</title>", title);
        html.markup("<style>" + style + "</style>");
        html.markup("</head>").markup("<body>");
    }

    private static void facts(
            HtmlText html, OwnSystem system, SizingResult sizing, ShuntRating shunt) {
        html.markup("<dl class=\"facts\">");
        fact(
                html,
                "battery",
                "%d V, %s, %s"
                        .formatted(
                                system.nominalVolts(),
                                SheetFigures.ampHours(system.ampHours()),
                                system.chemistry().key()));
        fact(html, "shunt", shunt.toString());
        fact(html, "taken in a day", SheetFigures.ampHours(sizing.ampHoursPerDay()));
        fact(html, "flows for hours at most", SheetFigures.amps(sizing.steadyAmps()));
        fact(html, "flows for moments at most", SheetFigures.amps(sizing.peakAmps()));
        fact(
                html,
                "charger",
                system.chargerAmps() == 0
                        ? "none told"
                        : "up to " + SheetFigures.amps(system.chargerAmps()));
        fact(
                html,
                "days without charging",
                Double.isInfinite(sizing.autonomyDays())
                        ? "nothing draws"
                        : "%.1f".formatted(sizing.autonomyDays()));
        html.markup("</dl>");
        for (String each : sizing.findings()) {
            html.markup("<p class=\"failed\"><b>Does not fit:</b> %s</p>", each);
        }
    }

    private static void fact(HtmlText html, String label, String words) {
        html.markup("<div><dt>%s</dt><dd>%s</dd></div>", label, words);
    }
}
