package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Moment;
import org.gaugebench.sim.study.StudyResult;

/**
 * The bands of a study as SVG, in the manner of {@link Picture}: the coverage interval of the drawn
 * devices as an area, the middle half, median, smallest and largest as lines, and the limits of
 * first order as dashes. A strip for each case.
 */
public final class StudyPicture {
    private static final int MARGIN = 140;
    private static final int TEXT_WIDTH = PictureSheet.WIDTH - 2 * MARGIN;
    private static final int TITLE_SIZE = 210;
    private static final int USUAL_SIZE = 150;
    private static final int FOOT_SIZE = 125;
    private static final int HEIGHT = 2_100;
    private static final int LINES = 9;
    private static final int SWATCH = 380;
    private static final PictureInk RULE = new PictureInk(PictureInk.RULE, 7, "");
    private static final PictureInk FRAME = new PictureInk(PictureInk.TEXT, 8, "");
    private static final PictureInk MEDIAN = PictureInk.ofGauge(0);
    private static final PictureInk FIRST = PictureInk.ofGauge(1);
    private static final PictureInk HALF = PictureInk.ofGauge(2);
    private static final PictureInk EXTREME = new PictureInk("#5a5a5a", 8, "");

    private final StudyResult result;
    private final String version;
    private final XmlText xml = new XmlText();
    private final PictureSheet sheet = new PictureSheet(xml);

    private StudyPicture(StudyResult result, String version) {
        this.result = result;
        this.version = version;
    }

    /**
     * Draws a study.
     *
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(StudyResult result, String version) {
        int height = new StudyPicture(result, version).draw(0);
        StudyPicture drawn = new StudyPicture(result, version);
        drawn.draw(height);
        return drawn.xml.toString();
    }

    private int draw(int height) {
        xml.open("svg")
                .with("xmlns", "http://www.w3.org/2000/svg")
                .with("viewBox", "0 0 " + PictureSheet.WIDTH + " " + height)
                .with("width", PictureSheet.WIDTH / 10)
                .with("height", height / 10)
                .with("style", "max-width:100%;height:auto")
                .with("role", "img")
                .with("aria-labelledby", "title desc")
                .with("font-family", PictureType.FAMILY)
                .with("fill", PictureInk.TEXT)
                .with("stroke-linejoin", "round");
        String title = Page.clean(result.spec().title());
        xml.open("title").with("id", "title").close(title);
        xml.open("desc").with("id", "desc").close(description());
        xml.open("path")
                .with("d", "M0 0h" + PictureSheet.WIDTH + "v" + height + "H0z")
                .with("fill", PictureInk.PAPER)
                .close();
        int y = sheet.paragraph(MARGIN, MARGIN + 180, TITLE_SIZE, TEXT_WIDTH, title);
        y = legend(y + 10);
        for (CaseResult each : result.cases()) {
            y = strip(each, y);
        }
        y = foot(y);
        xml.close();
        return (y + 9) / 10 * 10;
    }

    private String description() {
        StringBuilder text = new StringBuilder();
        for (CaseResult each : result.cases()) {
            StudyWords words = new StudyWords(result, each);
            text.append(each.name().isEmpty() ? "" : Page.clean(each.name()) + ": ");
            text.append(words.answer()).append(": ").append(words.claim()).append(". ");
        }
        return text.toString().strip();
    }

    private int legend(int from) {
        String percent = coverage();
        List<String> names =
                List.of(
                        percent + " of the devices",
                        "median",
                        "middle half",
                        "smallest and largest",
                        percent + " limits of first order");
        List<PictureInk> inks = List.of(FRAME, MEDIAN, HALF, EXTREME, FIRST);
        int x = MARGIN;
        int y = from;
        for (int i = 0; i < names.size(); i++) {
            int width = SWATCH + 70 + PictureType.width(names.get(i), USUAL_SIZE);
            if (x > MARGIN && x + width > PictureSheet.WIDTH - MARGIN) {
                x = MARGIN;
                y += 210;
            }
            if (i == 0) {
                sheet.box(x, y - 110, SWATCH, 120);
            } else {
                sheet.stroke(inks.get(i), x, y - 50, x + SWATCH, y - 50);
            }
            sheet.words(x + SWATCH + 70, y, USUAL_SIZE, names.get(i));
            x += width + 180;
        }
        return y + 90;
    }

    private String coverage() {
        return org.gaugebench.sim.units.QuantityFormat.format(
                result.spec().coveragePartsPerMillion(),
                org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION);
    }

    private PictureCurve curve(CaseResult each, java.util.function.ToDoubleFunction<Moment> of) {
        PictureCurve curve = new PictureCurve(each.durationMillis());
        for (Moment moment : each.moments()) {
            double value = of.applyAsDouble(moment);
            curve.add(
                    moment.atMillis(),
                    Double.isNaN(value) ? PictureSeries.NONE : StrictMath.round(value));
        }
        return curve;
    }

    private int strip(CaseResult each, int from) {
        String heading =
                StudyFigures.what(result.spec()) + ", " + StudyFigures.symbol(result.spec().unit());
        int y = from + 170;
        if (!each.name().isEmpty()) {
            sheet.words(MARGIN, y, USUAL_SIZE, Page.clean(each.name()));
            y += 200;
        }
        sheet.words(PictureSheet.LEFT, y, USUAL_SIZE, heading);
        int top = y + 60;
        List<PictureCurve> drawn = new ArrayList<>();
        for (int place = Moment.SMALLEST; place <= Moment.LARGEST; place++) {
            int chosen = place;
            drawn.add(curve(each, it -> it.percentiles()[chosen]));
        }
        PictureCurve below = curve(each, it -> it.firstLimits().lower());
        PictureCurve above = curve(each, it -> it.firstLimits().upper());
        long lowest = 0;
        long highest = 0;
        for (PictureCurve curve : List.of(drawn.get(0), drawn.get(6), below, above)) {
            if (curve.lowest() != PictureSeries.NONE) {
                lowest = Math.min(lowest, curve.lowest());
                highest = Math.max(highest, curve.highest());
            }
        }
        PictureScale scale =
                new PictureScale(
                        lowest,
                        highest,
                        StudyFigures.shift(result.spec().unit()),
                        10,
                        LINES,
                        top,
                        HEIGHT);
        PictureClock clock =
                new PictureClock(each.durationMillis(), PictureSheet.LEFT, PictureSheet.FRAME);
        sheet.area(drawn.get(Moment.LOWER), drawn.get(Moment.UPPER), clock, scale);
        rules(scale, clock);
        sheet.stroke(
                PictureInk.TRUTH_SLIM,
                PictureSheet.LEFT,
                scale.y(0),
                PictureSheet.LEFT + PictureSheet.FRAME,
                scale.y(0));
        sheet.curve(EXTREME, drawn.get(Moment.SMALLEST), clock, scale);
        sheet.curve(EXTREME, drawn.get(Moment.LARGEST), clock, scale);
        sheet.curve(HALF, drawn.get(Moment.QUARTER), clock, scale);
        sheet.curve(HALF, drawn.get(Moment.THREE_QUARTERS), clock, scale);
        sheet.curve(FIRST, below, clock, scale);
        sheet.curve(FIRST, above, clock, scale);
        sheet.curve(MEDIAN, drawn.get(Moment.MEDIAN), clock, scale);
        return words(each, axis(clock, scale.bottom()));
    }

    private void rules(PictureScale scale, PictureClock clock) {
        int right = PictureSheet.LEFT + PictureSheet.FRAME;
        for (long value : scale.lines()) {
            int y = scale.y(value);
            sheet.stroke(RULE, PictureSheet.LEFT, y, right, y);
            String label = scale.label(value);
            int size = PictureType.fitting(label, USUAL_SIZE, PictureSheet.LEFT - 85);
            sheet.wordsBefore(PictureSheet.LEFT - 75, y + size / 3, size, label);
        }
        for (long moment : clock.lines()) {
            sheet.stroke(RULE, clock.x(moment), scale.top(), clock.x(moment), scale.bottom());
        }
        sheet.stroke(FRAME, PictureSheet.LEFT, scale.bottom(), right, scale.bottom());
    }

    private int axis(PictureClock clock, int from) {
        int right = PictureSheet.WIDTH - 20;
        for (long moment : clock.lines()) {
            String label = clock.label(moment);
            int half = (PictureType.width(label, USUAL_SIZE) + 1) / 2;
            sheet.wordsAround(
                    Math.min(clock.x(moment), right - half), from + 190, USUAL_SIZE, label);
        }
        sheet.words(PictureSheet.LEFT, from + 390, USUAL_SIZE, clock.heading());
        return from + 450;
    }

    private int words(CaseResult each, int from) {
        StudyWords words = new StudyWords(result, each);
        String text = words.answer() + ": " + words.claim() + ". " + words.convergence() + ".";
        int y = sheet.paragraph(MARGIN, from + 190, USUAL_SIZE, TEXT_WIDTH, text);
        return sheet.paragraph(MARGIN, y, USUAL_SIZE, TEXT_WIDTH, words.validation());
    }

    private int foot(int from) {
        sheet.stroke(FRAME, MARGIN, from, PictureSheet.WIDTH - MARGIN, from);
        String file = result.spec().file().replace('\\', '/');
        String origin =
                "simulated; %s, seed %s, digest %s, gauge-sim %s"
                        .formatted(
                                file.substring(file.lastIndexOf('/') + 1),
                                result.spec().seed(),
                                result.spec().digest(),
                                version);
        return sheet.paragraph(MARGIN, from + 170, FOOT_SIZE, TEXT_WIDTH, origin) - 60;
    }
}
