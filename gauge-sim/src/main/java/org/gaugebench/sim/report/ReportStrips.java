package org.gaugebench.sim.report;

import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;
import org.jspecify.annotations.Nullable;

/** The places of the strips, what each of them says to a screen reader, and the keys above them. */
final class ReportStrips {
    private final RunResult result;
    private final ReportTrace trace;
    private final @Nullable Attribution attribution;
    private final HtmlText html;

    ReportStrips(
            RunResult result, ReportTrace trace, @Nullable Attribution attribution, HtmlText html) {
        this.result = result;
        this.trace = trace;
        this.attribution = attribution;
        this.html = html;
    }

    void write() {
        html.markup("<section class=\"sheet\" id=\"charts\">");
        html.markup("<h2>What happened over time</h2>");
        html.markup(
                "<noscript><p>The strips are drawn by a script of this page, which is switched"
                        + " off here. The tables tell the rest.</p></noscript>");
        keys();
        kept();
        gauges();
        strip("charge", "State of charge, %", charge());
        strip("current", "Current, A (positive: into the battery)", current());
        strip("voltage", "Voltage, V", voltage());
        strip("temperature", "Temperature, °C", temperature());
        strip("rule", "Full-charge rule", "State of the full-charge rule over time.");
        strip("hours", "Hours left", hours());
        if (attribution != null) {
            strip(
                    "attribution",
                    "Where the error of " + attribution.gauge() + " comes from, Ah (shown - true)",
                    "The error split by cause over time; the table below has its end.");
        }
        html.markup("</section>");
    }

    private void keys() {
        html.markup("<div class=\"toolbar screen-only\" role=\"toolbar\" aria-label=\"Time\">");
        html.markup("<output id=\"cursor-time\">no moment chosen</output>");
        html.markup("<span class=\"keys\">");
        key("earlier", "\u25c2", "Earlier");
        key("later", "\u25b8", "Later");
        key("closer", "+", "Closer");
        key("wider", "\u2212", "Wider");
        key("whole", "Whole run", "Whole run");
        html.markup("</span>");
        html.markup("</div>");
        html.markup("<div class=\"row screen-only\">");
        html.markup(
                "<label class=\"choice\">Colours <select id=\"theme\"><option value=\"\">as the"
                        + " system</option><option value=\"light\">light</option><option"
                        + " value=\"dark\">dark</option></select></label>");
        html.markup(
                "<label class=\"switch\"><input type=\"checkbox\" id=\"large\">large, for a"
                        + " room</label>");
        html.markup("</div>");
        html.markup("<details class=\"screen-only\" id=\"help\"><summary>Mouse and keys</summary>");
        html.markup(
                "<p>Drag over a strip to see that time closer; drag with Shift held, or with a"
                        + " finger, to move. All strips show the same time and the same moment."
                        + " With a strip in focus:</p><ul>");
        help("\u2190 \u2192", "move the moment; with Shift ten times as far");
        help("+ \u2212", "closer, wider");
        help("Page Up, Page Down", "earlier, later by half of what is seen");
        help("N, P", "next, previous event");
        help("Home or 0", "the whole run");
        help("Esc", "no moment");
        html.markup("</ul></details>");
        html.markup("<p id=\"range\" class=\"soft small figure\" aria-live=\"polite\"></p>");
    }

    /** Without it, two values under the cursor are taken for values of one moment. */
    private void kept() {
        long stretch = trace.bucketTicks() * result.scenario().tickMillis();
        if (trace.bucketTicks() == 1) {
            return;
        }
        html.markup(
                "<p class=\"soft small\">Away from events and failures a strip keeps the lowest and"
                    + " the highest value of every %s, each at its own moment: there, two values"
                    + " under the cursor may be as far apart as that. Charge and band of most"
                    + " gauges are looked at once a minute. %s</p>",
                Figures.duration(stretch),
                attribution == null
                        ? ""
                        : "The error is split by cause at %s moments, those among them at which"
                                        .formatted(attribution.splits().size())
                                + " the count was set.");
    }

    private void key(String id, String face, String name) {
        html.markup(
                "<button type=\"button\" id=\"%s\" aria-label=\"%s\" title=\"%s\">%s</button>",
                id, name, name, face);
    }

    private void help(String keys, String words) {
        html.markup("<li><kbd>%s</kbd> %s</li>", keys, words);
    }

    /** With one gauge there is nothing to choose. */
    private void gauges() {
        if (trace.gauges() < 2) {
            return;
        }
        html.markup(
                "<fieldset class=\"row screen-only\" id=\"gauges\"><legend>Gauges shown</legend>");
        for (int i = 0; i < trace.gauges(); i++) {
            html.markup(
                    "<label class=\"switch\"><input type=\"checkbox\" checked data-gauge=\"%s\">%s"
                            + "</label>",
                    i, result.lanes().get(i).gauge());
        }
        html.markup("</fieldset>");
        if (result.lanes().size() > trace.gauges()) {
            html.markup(
                    "<p>The first %s of %s gauges are drawn; more lines are not told apart.</p>",
                    trace.gauges(), result.lanes().size());
        }
    }

    private void strip(String name, String heading, String summary) {
        html.markup("<figure class=\"strip\" data-strip=\"%s\">", name);
        html.markup("<figcaption><h3>%s</h3>", heading);
        html.markup("<ul class=\"key\" id=\"key-%s\"></ul></figcaption>", name);
        html.markup(
                "<div class=\"chart\" id=\"chart-%s\" data-chart=\"%s\" role=\"img\" tabindex=\"0\""
                        + " aria-label=\"%s\"></div>",
                name, name, summary);
        html.markup("<p class=\"note soft small\" id=\"note-%s\" hidden></p>", name);
        html.markup(
                "<details class=\"values\" data-values=\"%s\"><summary>Values of what is seen, as a"
                        + " table</summary><div class=\"wide\" tabindex=\"0\" role=\"region\""
                        + " aria-label=\"Values: %s\"></div></details>",
                name, heading);
        html.markup("</figure>");
    }

    private String over() {
        return " over " + Figures.duration(result.simulatedMillis()) + ": ";
    }

    private String charge() {
        StringBuilder words = new StringBuilder("State of charge").append(over());
        words.append("true ").append(range(ReportTrace.TRUE_STATE, 4, 1, "%"));
        words.append(", at the end ").append(Figures.percent(result.finalTruePartsPerMillion()));
        for (int i = 0; i < trace.gauges(); i++) {
            LaneResult lane = result.lanes().get(i);
            words.append("; ").append(lane.gauge()).append(' ');
            words.append(range(ReportTrace.column(i, ReportLane.STATE), 4, 1, "%"));
            if (lane.worstAtMillis() >= 0) {
                words.append(", worst error ");
                words.append(TextReport.points(lane.worstErrorPartsPerMillion()));
                words.append(" points at ").append(Figures.moment(lane.worstAtMillis()));
            }
        }
        return words.append('.').toString();
    }

    private String current() {
        return "Current" + over() + both(ReportTrace.TRUE_CURRENT, ReportLane.CURRENT, 6, "A");
    }

    private String voltage() {
        return "Voltage" + over() + both(ReportTrace.TRUE_VOLTAGE, ReportLane.VOLTAGE, 6, "V");
    }

    private String temperature() {
        return "Temperature"
                + over()
                + both(ReportTrace.TRUE_TEMPERATURE, ReportLane.TEMPERATURE, 3, "°C");
    }

    private String hours() {
        StringBuilder words = new StringBuilder("Hours left").append(over());
        for (int i = 0; i < trace.gauges(); i++) {
            words.append(i == 0 ? "" : "; ").append(result.lanes().get(i).gauge()).append(' ');
            words.append(minutes(ReportTrace.column(i, ReportLane.HOURS)));
        }
        int ends = trace.starved().spans().size();
        words.append(
                ends == 0
                        ? "; the loads are met to the end of the run"
                        : "; the loads are not met first at "
                                + Figures.moment(trace.starved().spans().get(0).fromMillis()));
        return words.append('.').toString();
    }

    private String both(int truth, int figure, int shift, String unit) {
        StringBuilder words = new StringBuilder("true ");
        words.append(range(truth, shift, 2, unit));
        for (int i = 0; i < trace.gauges(); i++) {
            words.append("; ").append(result.lanes().get(i).gauge()).append(' ');
            words.append(range(ReportTrace.column(i, figure), shift, 2, unit));
        }
        return words.append('.').toString();
    }

    private String range(int column, int shift, int digits, String unit) {
        long[] range = extremes(trace.channel(column));
        return range.length == 0
                ? "never known"
                : "from %s to %s %s"
                        .formatted(
                                Figures.decimal(range[0], shift, digits),
                                Figures.decimal(range[1], shift, digits),
                                unit);
    }

    private String minutes(int column) {
        long[] range = extremes(trace.channel(column));
        return range.length == 0
                ? "never known"
                : "from %s to %s"
                        .formatted(
                                Figures.duration(range[0] * 60_000),
                                Figures.duration(range[1] * 60_000));
    }

    private static long[] extremes(ReportChannel channel) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (int i = 0; i < channel.size(); i++) {
            if (channel.value(i) != ReportChannel.GAP) {
                low = Math.min(low, channel.value(i));
                high = Math.max(high, channel.value(i));
            }
        }
        return low > high ? new long[0] : new long[] {low, high};
    }
}
