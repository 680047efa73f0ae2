package org.gaugebench.sim.report;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.page.PageAsset;
import org.jspecify.annotations.Nullable;

/**
 * A run as one HTML page: what a person reads first, strips over time that can be zoomed, tables,
 * and how to run it again. The file needs nothing else and asks nobody; its policy forbids it to.
 * The same run gives the same bytes.
 */
public final class ReportPage {
    private final RunResult result;
    private final ReportTrace trace;
    private final @Nullable Attribution attribution;
    private final String version;
    private final HtmlText html = new HtmlText();

    private ReportPage(
            RunResult result,
            ReportTrace trace,
            @Nullable Attribution attribution,
            String version) {
        this.result = result;
        this.trace = trace;
        this.attribution = attribution;
        this.version = version;
    }

    /**
     * Writes the page.
     *
     * @param result what came of the run
     * @param trace what looked on
     * @param attribution the error split at moments of the whole run, or null for without
     * @param version of this program
     * @return the text of an HTML file
     */
    public static String of(
            RunResult result,
            ReportTrace trace,
            @Nullable Attribution attribution,
            String version) {
        trace.close(result.ticks());
        return new ReportPage(result, trace, attribution, version).write();
    }

    private String write() {
        String style =
                Stream.of(
                                PageAsset.LOOK.text(),
                                PageAsset.CHART_STYLE.text(),
                                PageAsset.text(ReportPage.class, "report.css"))
                        .collect(Collectors.joining("\n"));
        String script =
                Stream.of(
                                PageAsset.CHART_SCRIPT.text(),
                                PageAsset.text(ReportPage.class, "report-data.js"),
                                PageAsset.text(ReportPage.class, "report-charts.js"),
                                PageAsset.text(ReportPage.class, "report-axes.js"),
                                PageAsset.text(ReportPage.class, "report.js"))
                        .collect(Collectors.joining("\n"));
        List<ReportEvents.Entry> events = ReportEvents.of(result);
        ReportTables tables = new ReportTables(result, html, version);
        head(style, script);
        html.markup("<main>");
        tables.verdict();
        tables.readings();
        tables.expectations();
        new ReportStrips(result, trace, attribution, html).write();
        tables.events(events);
        tables.refused();
        if (attribution != null) {
            tables.attribution(attribution);
        }
        tables.origin(attribution);
        html.markup("</main>");
        foot();
        html.markup(
                "<script type=\"application/json\" id=\"run\">"
                        + ReportData.of(result, trace, events, attribution)
                        + "</script>");
        html.markup("<script>" + script + "</script>");
        return html.markup("</body>").markup("</html>").toString();
    }

    private void head(String style, String script) {
        html.markup("<!DOCTYPE html>").markup("<html lang=\"en-GB\">").markup("<head>");
        html.markup("<meta charset=\"utf-8\">");
        html.markup(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';"
                        + " base-uri 'none'; form-action 'none'; script-src "
                        + HtmlText.source(script)
                        + "; style-src "
                        + HtmlText.source(style)
                        + "\">");
        html.markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        html.markup("<meta name=\"color-scheme\" content=\"light dark\">");
        html.markup("<meta name=\"generator\" content=\"gauge-sim %s\">", version);
        html.markup("<title>%s: %s</title>", word(), result.scenario().title());
        html.markup("<style>" + style + "</style>");
        html.markup("</head>").markup("<body>");
        html.markup("<a class=\"skip\" href=\"#charts\">To the strips</a>");
    }

    private String word() {
        return switch (result.verdict()) {
            case PASSED -> "Passed";
            case FAILED -> "Failed";
            case NO_VERDICT -> "No verdict";
        };
    }

    private void foot() {
        html.markup("<footer class=\"soft small\">");
        html.markup(
                "<p>This page needs no network and asks for none. Its strips are drawn by uPlot,"
                        + " a script of others that lies inside it:</p>");
        html.markup("<details><summary>Licence of uPlot</summary>");
        html.markup("<pre>%s</pre></details>", PageAsset.CHART_LICENCE.text());
        html.markup("</footer>");
    }
}
