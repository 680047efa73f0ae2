package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.core.port.Event.Severity;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RefusedCommand;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.Verdict;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.jspecify.annotations.Nullable;

/** The words and ledgers of a report's page; its words are those of {@link TextReport}. */
final class ReportTables {
    private static final int MOST_REFUSED = 100;

    /** A moment that a reader can go to: a key with the time in milliseconds. */
    private static final String MOMENT =
            "<button type=\"button\" class=\"moment\" data-at=\"%s\">%s</button>";

    private final RunResult result;
    private final HtmlText html;
    private final String version;

    ReportTables(RunResult result, HtmlText html, String version) {
        this.result = result;
        this.html = html;
        this.version = version;
    }

    private void begin(String id, String heading) {
        html.markup("<section class=\"sheet\" id=\"%s\">", id);
        html.markup("<h2>%s</h2>", heading);
    }

    private void end() {
        html.markup("</section>");
    }

    private void table(String caption, String... heads) {
        html.markup(
                "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"%s\">", caption);
        html.markup("<table class=\"ledger stack\"><caption>%s</caption><thead><tr>", caption);
        for (String head : heads) {
            boolean figure = head.startsWith("#");
            html.markup(
                    "<th scope=\"col\"" + (figure ? " class=\"figure\"" : "") + ">%s</th>",
                    figure ? head.substring(1) : head);
        }
        html.markup("</tr></thead><tbody>");
    }

    private void endTable() {
        html.markup("</tbody></table></div>");
    }

    private String moment(long atMillis) {
        return MOMENT.formatted(atMillis, HtmlText.safe(Figures.moment(atMillis)));
    }

    void verdict() {
        String word =
                switch (result.verdict()) {
                    case PASSED -> "<strong class=\"held\">PASSED</strong>";
                    case FAILED -> "<strong class=\"failed\">FAILED</strong>";
                    case NO_VERDICT -> "<strong class=\"doubt\">NO VERDICT</strong>";
                };
        html.markup("<header class=\"sheet\" id=\"verdict\">");
        html.markup(
                "<p class=\"verdict\" data-verdict=\"%s\">" + word + ": %s</p>",
                result.verdict().words(),
                TextReport.heldOf(result));
        html.markup("<h1>%s</h1>", result.scenario().title());
        html.markup("<p class=\"soft\">%s</p>", result.scenario().name());
        if (!result.scenario().about().isEmpty()) {
            html.markup("<p>%s</p>", result.scenario().about());
        }
        if (result.verdict() == Verdict.NO_VERDICT) {
            html.markup("<p>The file expects nothing, so this run proves nothing.</p>");
        }
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood()) {
                failure(each);
            }
        }
        html.markup("</header>");
    }

    private void failure(ExpectationResult each) {
        html.markup("<div class=\"failure\">");
        html.markup(
                "<p><strong class=\"failed\">FAILED</strong> %s</p>", each.expectation().text());
        html.markup("<p>%s</p>", FailureText.whatWasFound(each));
        if (each.outcome() != Outcome.NEVER_EVALUATED && !each.detail().isEmpty()) {
            html.markup("<p>%s</p>", each.detail());
        }
        if (!each.expectation().because().isEmpty()) {
            html.markup("<p>expected because %s</p>", each.expectation().because());
        }
        html.markup("<p class=\"soft\">written at %s</p>", each.expectation().mark());
        if (each.atMillis() >= 0) {
            html.markup("<p>To see that moment here: " + moment(each.atMillis()) + "</p>");
            html.markup(
                    "<p>To see it in a terminal:</p><pre tabindex=\"0\"><code>%s</code></pre>",
                    FailureText.command(each, result.scenario(), result.seed()));
        }
        html.markup("</div>");
    }

    void readings() {
        begin("readings", "Reading against truth");
        table(
                "State of charge; errors in percentage points, shown minus true",
                "Gauge",
                "#At the end",
                "#True",
                "#Error",
                "#Worst error",
                "Worst at");
        for (LaneResult lane : result.lanes()) {
            boolean known = lane.finalPartsPerMillion() != Readout.NOT_KNOWN;
            long truth = result.finalTruePartsPerMillion();
            html.markup("<tr><th scope=\"row\">%s</th>", lane.gauge());
            figure(
                    "at the end",
                    known ? Figures.percent(lane.finalPartsPerMillion()) : "not known");
            figure("true", Figures.percent(truth));
            figure("error", known ? TextReport.points(lane.finalPartsPerMillion() - truth) : "-");
            boolean ever = lane.worstAtMillis() >= 0;
            figure(
                    "worst error",
                    ever ? TextReport.points(lane.worstErrorPartsPerMillion()) : "never known");
            html.markup("<td>" + (ever ? moment(lane.worstAtMillis()) : "") + "</td></tr>");
        }
        endTable();
        for (int i = 0; i < result.lanes().size(); i++) {
            LaneResult lane = result.lanes().get(i);
            GaugeSpec.Kind kind = result.scenario().gauges().get(i).kind();
            String words = TextReport.beliefWords(lane, kind);
            if (!words.isEmpty()) {
                html.markup("<p>%s</p>", words);
            }
        }
        StringBuilder charge = new StringBuilder("Charge left at the end: true ");
        charge.append(TextReport.ampHours(result.finalTrueMicroampHours()));
        for (LaneResult lane : result.lanes()) {
            boolean known = lane.finalPartsPerMillion() != Readout.NOT_KNOWN;
            charge.append(", ").append(lane.gauge()).append(' ');
            charge.append(known ? TextReport.ampHours(lane.finalMicroampHours()) : "not known");
        }
        html.markup("<p>%s</p>", charge);
        end();
    }

    private void figure(String label, String words) {
        html.markup("<td class=\"figure\" data-label=\"%s\">%s</td>", label, thin(words));
    }

    /** A figure with a true minus, and a thin space before its unit. */
    static String thin(String figure) {
        String words = figure.replaceFirst("^-(?=\\d)", "\u2212");
        return words.replaceFirst("(?<=\\d) (?=(%|Ah|A|V|°C)$)", "\u202f");
    }

    void expectations() {
        begin("expectations", "Expectations");
        if (result.expectations().isEmpty()) {
            html.markup("<p>none</p>");
            end();
            return;
        }
        table("What the scenario expects, and what was found", "Outcome", "Expected", "Found");
        for (ExpectationResult each : result.expectations()) {
            boolean held = each.outcome().isGood();
            String word = held ? each.outcome() == Outcome.HELD ? "held" : "fails" : "FAILED";
            html.markup(
                    "<tr><td><strong class=\"" + (held ? "held" : "failed") + "\">%s</strong></td>",
                    word);
            html.markup("<td>%s", each.expectation().text());
            if (!each.expectation().because().isEmpty()) {
                html.markup(
                        "<br><span class=\"soft small\">because %s</span>",
                        each.expectation().because());
            }
            html.markup("</td><td>%s", FailureText.whatWasFound(each));
            if (each.outcome() == Outcome.FAILED_AS_EXPECTED) {
                html.markup("<br>as expected, because %s", each.expectation().expectedToFail());
            }
            html.markup("</td></tr>");
        }
        endTable();
        end();
    }

    void events(List<ReportEvents.Entry> entries) {
        begin("events", "Events");
        if (entries.isEmpty()) {
            html.markup("<p>none</p>");
            end();
            return;
        }
        table(
                "What the gauges announced; the numbers stand under the first strip",
                "#No.",
                "When",
                "Gauge",
                "What",
                "#Shown",
                "#True");
        for (ReportEvents.Entry entry : entries) {
            RecordedEvent event = entry.group().first();
            html.markup("<tr><td class=\"figure\" data-label=\"No.\">%s</td>", entry.number());
            html.markup("<td>" + moment(event.atMillis()) + "</td>");
            html.markup("<td>%s</td>", event.gauge());
            boolean warns = event.event().severity() == Severity.WARNING;
            String again =
                    entry.group().count() == 1
                            ? ""
                            : "; and %s more of these until %s"
                                    .formatted(
                                            entry.group().count() - 1,
                                            Figures.moment(entry.group().last().atMillis()));
            html.markup(
                    "<td>" + (warns ? "<span class=\"doubt\">warning:</span> " : "") + "%s</td>",
                    event.event().sentence() + EventFigure.of(event) + again);
            boolean known = event.shownPartsPerMillion() != Readout.NOT_KNOWN;
            figure("shown", known ? Figures.percent(event.shownPartsPerMillion()) : "not known");
            figure("true", Figures.percent(event.truePartsPerMillion()));
            html.markup("</tr>");
        }
        endTable();
        long leftOut = ReportEvents.leftOut(result, entries);
        if (leftOut > 0) {
            html.markup("<p>and %s more events, which have no line here</p>", leftOut);
        }
        end();
    }

    void refused() {
        if (result.refused().isEmpty()) {
            return;
        }
        begin("refused", "Commands that were refused");
        table("What gauges were told and did not do", "When", "Gauge", "Command", "Why not");
        int shown = Math.min(MOST_REFUSED, result.refused().size());
        for (RefusedCommand each : result.refused().subList(0, shown)) {
            html.markup("<tr><td>" + moment(each.atMillis()) + "</td>");
            html.markup(
                    "<td>%s</td><td>%s</td><td>%s</td></tr>",
                    each.gauge(), each.commandWords(), each.reason());
        }
        endTable();
        if (shown < result.refused().size()) {
            html.markup("<p>and %s more</p>", result.refused().size() - shown);
        }
        end();
    }

    void attribution(Attribution attribution) {
        Split last = attribution.splits().get(attribution.splits().size() - 1);
        begin("attribution", "Where the error of " + attribution.gauge() + " comes from");
        if (!last.known()) {
            html.markup("<p>It shows no charge at the end, so there is nothing to split.</p>");
            end();
            return;
        }
        String caption = "At " + Figures.moment(last.atMillis()) + ", shown minus true";
        table(caption, "Cause", "#Ah", "#Points");
        for (Cause cause : Attribution.PLAIN) {
            part(cause, last);
        }
        part("everything else", last.elseNanocoulombs(), last.elsePartsPerMillion(), "");
        part(
                "the whole error",
                last.errorNanocoulombs(),
                last.errorPartsPerMillion(),
                " class=\"balance\"");
        endTable();
        html.markup(
                "<p class=\"soft\">The parts add up to the error exactly; printed figures are"
                        + " rounded.</p>");
        html.markup(
                "<details id=\"causes\"><summary>All causes, those of everything else among"
                        + " them</summary>");
        table(caption + "; all causes", "Cause", "#Ah", "#Points");
        for (Cause cause : Cause.values()) {
            part(cause, last);
        }
        endTable();
        html.markup(
                "<p class=\"soft\">Each is taken away together with those above it. What two causes"
                        + " do together stands with the upper one: another order would share it"
                        + " differently.</p></details>");
        end();
    }

    private void part(Cause cause, Split split) {
        part(cause.words(), split.nanocoulombs(cause), split.partsPerMillion(cause), "");
    }

    private void part(String words, long nanocoulombs, long partsPerMillion, String row) {
        html.markup("<tr" + row + "><th scope=\"row\">%s</th>", words);
        figure("Ah", signed(Figures.decimal(StrictMath.round(nanocoulombs / 3.6e6), 6, 4)));
        figure("points", TextReport.points(partsPerMillion));
        html.markup("</tr>");
    }

    private static String signed(String figure) {
        return figure.startsWith("-") || figure.matches("[0.]+") ? figure : "+" + figure;
    }

    /** Options by which the same run gives the same page. */
    private String options(@Nullable Attribution attribution) {
        if (attribution == null) {
            return " --report report.html";
        }
        String main = result.scenario().gauges().get(0).name();
        return " --report report.html --attribution"
                + (attribution.gauge().equals(main)
                        ? ""
                        : " --attribution-gauge " + attribution.gauge());
    }

    void origin(@Nullable Attribution attribution) {
        begin("origin", "Where this comes from");
        html.markup("<dl class=\"origin\">");
        String[][] lines = {
            {"simulated", TextReport.simulated(result)},
            {"seed", Long.toString(result.seed())},
            {"digest", RunJson.hex(result.digest())},
            {"scenario", ScenarioWriter.digest(result.scenario())},
            {"version", version},
        };
        for (String[] line : lines) {
            html.markup(
                    "<dt>%s</dt><dd class=\"figure\" data-origin=\"%s\">%s</dd>",
                    line[0], line[0], line[1]);
        }
        html.markup("</dl>");
        html.markup(
                "<p>The same seed, scenario and version give the same page. To run it again:</p>");
        html.markup(
                "<pre tabindex=\"0\"><code id=\"command\">%s</code></pre>",
                FailureText.run(FailureText.Again.of(result), options(attribution)));
        html.markup("<details id=\"settings\"><summary>The scenario with every setting</summary>");
        html.markup(
                "<pre tabindex=\"0\">%s</pre></details>",
                ScenarioWriter.resolved(result.scenario()));
        end();
    }
}
