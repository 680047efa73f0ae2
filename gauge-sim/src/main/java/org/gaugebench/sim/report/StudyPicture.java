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
    private static final int MARGIN = PictureSide.MARGIN;
    private static final int USUAL_SIZE = PictureSide.USUAL_SIZE;
    private static final int HEIGHT = 2_100;
    private static final int LINES = 9;
    private static final PictureInk MEDIAN = PictureInk.ofGauge(0);
    private static final PictureInk FIRST = PictureInk.ofGauge(1);
    private static final PictureInk HALF = PictureInk.ofGauge(2);
    private static final PictureInk EXTREME = new PictureInk("#5a5a5a", 8, "");
    private static final List<PictureInk> LINES_SHOWN = List.of(MEDIAN, HALF, EXTREME, FIRST);

    private final StudyResult result;
    private final String version;
    private final PictureSide side;
    private final PictureSheet sheet;

    private StudyPicture(StudyResult result, String version, PictureSide side) {
        this.result = result;
        this.version = version;
        this.side = side;
        sheet = side.sheet();
    }

    /**
     * Draws a study.
     *
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(StudyResult result, String version) {
        return PictureSide.of(side -> new StudyPicture(result, version, side).draw());
    }

    private int draw() {
        String title = Page.clean(result.spec().title());
        side.open(title, description());
        int y = legend(side.title(title) + 10);
        for (CaseResult each : result.cases()) {
            y = strip(each, y);
        }
        return side.close(foot(y));
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
        return side.legend(from, names, this::swatch);
    }

    private void swatch(int index, int x, int y, int width) {
        if (index == 0) {
            sheet.box(x, y - 60, width, 120);
        } else {
            sheet.stroke(LINES_SHOWN.get(index - 1), x, y, x + width, y);
        }
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
        PictureGrid grid = new PictureGrid(sheet, clock, scale);
        grid.rules();
        grid.floor();
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
        return words(each, PictureGrid.axis(sheet, clock, clock.heading(), scale.bottom()));
    }

    private int words(CaseResult each, int from) {
        StudyWords words = new StudyWords(result, each);
        String text = words.answer() + ": " + words.claim() + ". " + words.convergence() + ".";
        int y = side.paragraph(from + 190, text);
        return side.paragraph(y, words.validation());
    }

    private int foot(int from) {
        sheet.stroke(PictureInk.FRAMED, MARGIN, from, PictureSheet.WIDTH - MARGIN, from);
        String file = result.spec().file().replace('\\', '/');
        String origin =
                "simulated; %s, seed %s, digest %s, gauge-sim %s"
                        .formatted(
                                file.substring(file.lastIndexOf('/') + 1),
                                result.spec().seed(),
                                result.spec().digest(),
                                version);
        return sheet.paragraph(
                        MARGIN, from + 170, PictureSide.FOOT_SIZE, PictureSide.TEXT_WIDTH, origin)
                - 60;
    }
}
