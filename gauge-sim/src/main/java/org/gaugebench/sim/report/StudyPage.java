package org.gaugebench.sim.report;

import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Cause;
import org.gaugebench.sim.study.DeviceRow;
import org.gaugebench.sim.study.Moment;
import org.gaugebench.sim.study.StudyResult;
import org.gaugebench.sim.study.Validation;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/**
 * A study as one HTML page: the answer, limits both ways with their warning, bands over time, the
 * causes, and the devices that are worst. The file needs nothing else, holds no script and asks
 * nobody; its policy forbids it to. The same study gives the same bytes.
 */
public final class StudyPage {
    private static final int BAND_ROWS = 12;
    private static final int WORST_ROWS = 10;
    private static final int WIDE = 1_100;
    private static final int NARROW = 330;

    private final StudyResult result;
    private final StudySpec spec;
    private final String version;
    private final HtmlText html = new HtmlText();
    private String inCase = "";

    private StudyPage(StudyResult result, String version) {
        this.result = result;
        this.spec = result.spec();
        this.version = version;
    }

    /**
     * Writes the page.
     *
     * @param version of this program
     * @return the text of an HTML file
     */
    public static String of(StudyResult result, String version) {
        return new StudyPage(result, version).write();
    }

    private String write() {
        head(PageAsset.LOOK.text() + "\n" + PageAsset.text(StudyPage.class, "study.css"));
        html.markup("<main id=\"main\">");
        html.markup("<h1>%s</h1>", spec.title());
        if (result.cases().size() > 1) {
            overview();
        }
        for (int i = 0; i < result.cases().size(); i++) {
            one(result.cases().get(i), i + 1);
        }
        origin();
        html.markup("</main>");
        html.markup(
                "<footer class=\"soft small\"><p>%s</p><p>%s</p></footer>",
                Cautions.DEFER, Cautions.NO_PROTECTION);
        return html.markup("</body>").markup("</html>").toString();
    }

    private void head(String style) {
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
        html.markup("<title>%s: study</title>", spec.title());
        html.markup("<style>" + style + "</style>");
        html.markup("</head>").markup("<body>");
        html.markup("<a class=\"skip\" href=\"#bands-1\">To the bands</a>");
    }

    /** What varies, a line for each case. */
    private void overview() {
        html.markup("<section class=\"sheet\" id=\"sweep\">");
        html.markup("<h2>What varies</h2>");
        open("Each case with the same devices, at its end");
        heads("case", "answer", "drawn mean", "lower limit", "upper limit", "largest cause");
        for (int i = 0; i < result.cases().size(); i++) {
            CaseResult each = result.cases().get(i);
            StudyWords words = new StudyWords(result, each);
            Moment end = each.end();
            html.markup(
                    "<tr><th scope=\"row\"><a href=\"#case-%s\">%s</a></th>", i + 1, each.name());
            html.markup("<td>%s</td>", words.answer());
            figure(words.figures().of(end.sample().mean()));
            figure(words.figures().of(end.limits().lower()));
            figure(words.figures().of(end.limits().upper()));
            html.markup("<td>%s</td></tr>", largest(each));
        }
        close();
        html.markup("</section>");
    }

    private static String largest(CaseResult each) {
        int last = each.moments().size() - 1;
        return each.causes().stream()
                .filter(it -> Double.isFinite(it.firstShare()[last]))
                .max(Comparator.comparingDouble(it -> it.firstShare()[last]))
                .map(it -> it.name() + ", " + StudyFigures.share(it.firstShare()[last]))
                .orElse("-");
    }

    private void one(CaseResult each, int number) {
        StudyWords words = new StudyWords(result, each);
        inCase = each.name();
        html.markup("<section class=\"sheet\" id=\"case-%s\">", number);
        html.markup("<h2>%s</h2>", each.name().isEmpty() ? "The answer" : each.name());
        html.markup("<p class=\"verdict " + colour(each) + "\">%s</p>", words.answer());
        html.markup("<p>%s.</p>", words.claim());
        limits(each, words);
        bands(each, words, number);
        causes(each, words.figures());
        html.markup("<h3>How well the limits are known</h3>");
        html.markup("<p>%s.</p>", words.convergence());
        worst(each, words.figures());
        html.markup("</section>");
    }

    private String colour(CaseResult each) {
        return switch (result.answer(each)) {
            case YES -> "held";
            case NO -> "failed";
            case NOT_DECIDED, NOTHING_ASKED -> "doubt";
        };
    }

    private void limits(CaseResult each, StudyWords words) {
        StudyFigures figures = words.figures();
        Moment end = each.end();
        String percent = percent();
        html.markup("<h3>Limits, worked out both ways</h3>");
        open(StudyFigures.what(spec) + " at the end, " + Figures.moment(end.atMillis()));
        heads("", "first order", "drawn");
        pair("mean", figures.of(end.estimate()), figures.of(end.sample().mean()));
        pair(
                "standard uncertainty",
                figures.of(end.uncertainty()),
                figures.of(end.sample().standardUncertainty()));
        pair(
                percent + " limits, lower",
                figures.of(end.firstLimits().lower()),
                figures.of(end.limits().lower()));
        pair(
                percent + " limits, upper",
                figures.of(end.firstLimits().upper()),
                figures.of(end.limits().upper()));
        close();
        boolean agrees = end.validation().answer() == Validation.Answer.AGREES;
        html.markup(
                "<p class=\"validation\"><strong class=\"%s\">%s</strong> %s</p>",
                agrees ? "held" : "doubt",
                agrees ? "Both agree." : "Take the drawn ones.",
                words.validation());
    }

    private String percent() {
        return QuantityFormat.format(spec.coveragePartsPerMillion(), RecordUnit.PARTS_PER_MILLION);
    }

    private void bands(CaseResult each, StudyWords words, int number) {
        StudyStrip wide = new StudyStrip(spec, each, WIDE);
        String says =
                HtmlText.safe(
                        StudyFigures.what(spec)
                                + " over time; the table below has its figures. At the end "
                                + words.figures().of(each.end().limits().lower())
                                + " to "
                                + words.figures().of(each.end().limits().upper()));
        html.markup("<h3 id=\"bands-%s\">Bands over time</h3>", number);
        key();
        html.markup("<figure class=\"strip\">");
        html.markup(
                "<figcaption>%s, %s; %s</figcaption>",
                StudyFigures.what(spec), StudyFigures.symbol(spec.unit()), wide.heading());
        html.markup(wide.draw(says, "wide-strip"));
        html.markup(new StudyStrip(spec, each, NARROW).draw(says, "narrow"));
        html.markup("</figure>");
        StudyFigures figures = words.figures();
        open("Drawn devices over time, " + StudyFigures.symbol(spec.unit()));
        heads("time", "smallest", "lower", "median", "upper", "largest", "first order");
        List<Moment> moments = each.moments();
        int rows = Math.min(BAND_ROWS, moments.size());
        for (int i = 1; i <= rows; i++) {
            Moment moment = moments.get(moments.size() * i / rows - 1);
            html.markup(
                    "<tr><th scope=\"row\" class=\"at\">%s</th>",
                    Figures.moment(moment.atMillis()));
            for (int place :
                    new int[] {
                        Moment.SMALLEST, Moment.LOWER, Moment.MEDIAN, Moment.UPPER, Moment.LARGEST
                    }) {
                figure(figures.number(moment.percentiles()[place]));
            }
            figure(
                    figures.number(moment.firstLimits().lower())
                            + " to "
                            + figures.number(moment.firstLimits().upper()));
            html.markup("</tr>");
        }
        close();
    }

    private void key() {
        html.markup("<ul class=\"key\">");
        String[][] lines = {
            {"band", percent() + " of the devices"},
            {"median", "median"},
            {"half", "middle half"},
            {"extreme", "smallest and largest"},
            {"first", percent() + " limits of first order"}
        };
        for (String[] line : lines) {
            String data = line[0].equals("band") ? "M1 2h38v12h-38z" : "M0 8h40";
            html.markup(
                    "<li><svg viewBox=\"0 0 40 16\" width=\"40\" height=\"16\""
                            + " aria-hidden=\"true\"><path class=\""
                            + line[0]
                            + "\" d=\""
                            + data
                            + "\"/></svg>%s</li>",
                    line[1]);
        }
        html.markup("</ul>");
    }

    private void causes(CaseResult each, StudyFigures figures) {
        int last = each.moments().size() - 1;
        html.markup("<h3>Where the spread comes from</h3>");
        open("Share of each cause in the variance at the end: first order above, drawn below");
        heads("cause", "share", "first order", "drawn", "one u does", "alone at its ends");
        for (Cause cause : each.causes()) {
            html.markup("<tr><th scope=\"row\">%s</th>", cause.name());
            html.markup(
                    "<td><svg class=\"bars\" viewBox=\"0 0 100 22\" preserveAspectRatio=\"none\""
                            + " aria-hidden=\"true\">"
                            + bar("bar", 1, cause.firstShare()[last])
                            + bar("bar drawn", 12, cause.drawnShare()[last])
                            + "</svg></td>");
            figure(StudyFigures.share(cause.firstShare()[last]));
            figure(StudyFigures.share(cause.drawnShare()[last]));
            figure(figures.of(cause.part()));
            figure(
                    cause.isNoise()
                            ? ""
                            : figures.number(cause.atLower())
                                    + " to "
                                    + figures.number(cause.atUpper()));
            html.markup("</tr>");
        }
        close();
        html.markup(
                "<p class=\"small\">One u: one standard uncertainty. First order adds straight"
                        + " effects; drawn counts what each cause does alone in the drawn devices,"
                        + " straight or not. What is missing to the whole of those is chance, and"
                        + " causes that matter only together.</p>");
    }

    private static String bar(String style, int y, double share) {
        double width = Double.isFinite(share) ? Math.max(0, Math.min(1, share)) * 100 : 0;
        return "<rect class=\"%s\" x=\"0\" y=\"%s\" width=\"%s\" height=\"9\"/>"
                .formatted(style, y, Decimals.plain(StrictMath.round(width * 10), 1));
    }

    private void worst(CaseResult each, StudyFigures figures) {
        html.markup("<h3>The worst devices</h3>");
        List<DeviceRow> rows =
                each.rows().stream()
                        .filter(it -> it.worst() != DeviceRow.NONE)
                        .sorted(
                                Comparator.comparingLong((DeviceRow it) -> -Math.abs(it.worst()))
                                        .thenComparingInt(DeviceRow::number))
                        .limit(WORST_ROWS)
                        .toList();
        if (rows.isEmpty()) {
            html.markup("<p>No gauge of any device ever knew anything.</p>");
            return;
        }
        String[] heads = new String[3 + spec.tolerances().size()];
        heads[0] = "device";
        heads[1] = "worst error";
        heads[2] = "at";
        for (int i = 0; i < spec.tolerances().size(); i++) {
            heads[3 + i] = spec.tolerances().get(i).address();
        }
        open("Farthest from zero at any whole minute");
        heads(heads);
        for (DeviceRow row : rows) {
            html.markup("<tr><th scope=\"row\" class=\"figure\">%s</th>", row.number());
            figure(figures.of((double) row.worst()));
            figure(Figures.moment(row.worstAtMillis()));
            for (int i = 0; i < row.steps().length; i++) {
                Tolerance it = spec.tolerances().get(i);
                figure(QuantityFormat.format(row.steps()[i], it.unit()));
            }
            html.markup("</tr>");
        }
        close();
        html.markup("<p>Any of them runs again by its number, in the scenario's folder:</p>");
        html.markup(
                "<pre tabindex=\"0\"><code>gauge-sim study %s --device %s%s &gt; device.yaml\n"
                        + "gauge-sim run device.yaml</code></pre>",
                spec.file(),
                rows.get(0).number(),
                each.name().isEmpty() ? "" : " --variant '" + each.name() + "'");
    }

    private void origin() {
        html.markup("<section class=\"sheet\" id=\"origin\"><h2>Where this comes from</h2>");
        html.markup("<dl class=\"origin\">");
        String[][] lines = {
            {"study", spec.file()},
            {"seed", Long.toString(spec.seed())},
            {"digest", spec.digest()},
            {"version", version}
        };
        for (String[] line : lines) {
            html.markup("<dt>%s</dt><dd class=\"figure\">%s</dd>", line[0], line[1]);
        }
        html.markup("</dl>");
        html.markup(
                "<p>Simulated. The same study gives the same page, whatever the threads and the"
                        + " machine. Limits: JCGM 100 (first order) and JCGM 101 (drawn).</p>");
        html.markup("</section>");
    }

    private void open(String caption) {
        // A reader jumps between regions: each needs a name of its own.
        html.markup(
                "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"%s\">",
                caption + (inCase.isEmpty() ? "" : "; " + inCase));
        html.markup("<table class=\"ledger\"><caption>%s</caption>", caption);
    }

    private void heads(String... words) {
        html.markup("<thead><tr>");
        for (int i = 0; i < words.length; i++) {
            String word = words[i].isEmpty() ? "figure" : words[i];
            boolean isText = i == 0 || List.of("share", "answer", "largest cause").contains(word);
            html.markup(
                    "<th scope=\"col\"" + (isText ? "" : " class=\"figure\"") + ">%s</th>", word);
        }
        html.markup("</tr></thead><tbody>");
    }

    private void pair(String label, String first, String drawn) {
        html.markup("<tr><th scope=\"row\">%s</th>", label);
        figure(first);
        figure(drawn);
        html.markup("</tr>");
    }

    private void figure(String words) {
        html.markup("<td class=\"figure\">%s</td>", words);
    }

    private void close() {
        html.markup("</tbody></table></div>");
    }
}
