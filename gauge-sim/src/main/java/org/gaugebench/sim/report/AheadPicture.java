package org.gaugebench.sim.report;

import java.util.function.ToLongFunction;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.MonthAheadResult;

/**
 * The month ahead as a still picture: what the owner's gauge shows against what is left, how far
 * off it could be, and the day by which to charge fully.
 */
public final class AheadPicture {
    private static final int MARGIN = 140;
    private static final int SIZE = 150;
    private static final int HEIGHT = 2_100;
    private static final int LINES = 9;
    private static final int SWATCH = 380;
    private static final long DAY_MILLIS = 86_400_000;
    private static final PictureInk RULE = new PictureInk(PictureInk.RULE, 7, "");
    private static final PictureInk FRAME = new PictureInk(PictureInk.TEXT, 8, "");
    private static final PictureInk MARK = new PictureInk(PictureInk.TEXT, 22, "90 50");

    private final MonthAheadResult result;
    private final XmlText xml = new XmlText();
    private final PictureSheet sheet = new PictureSheet(xml);
    private final long durationMillis;
    private final PictureClock clock;

    private AheadPicture(MonthAheadResult result) {
        this.result = result;
        durationMillis = result.course().get(result.course().size() - 1).atMillis();
        clock = new PictureClock(durationMillis, PictureSheet.LEFT, PictureSheet.FRAME);
    }

    /**
     * Draws the month.
     *
     * @param result with a course
     * @return a whole SVG document
     */
    public static String of(MonthAheadResult result) {
        int height = new AheadPicture(result).draw(0);
        AheadPicture drawn = new AheadPicture(result);
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
        xml.open("title").with("id", "title").close("The month ahead without a full charge");
        xml.open("desc").with("id", "desc").close(AheadText.answer(result));
        xml.open("path")
                .with("d", "M0 0h" + PictureSheet.WIDTH + "v" + height + "H0z")
                .with("fill", PictureInk.PAPER)
                .close();
        int width = PictureSheet.WIDTH - 2 * MARGIN;
        int y = sheet.paragraph(MARGIN, MARGIN + 150, 190, width, AheadText.answer(result));
        y = legend(y);
        y = strip(y);
        y = sheet.paragraph(MARGIN, y + 130, 125, width, "Simulated. " + Cautions.NO_PROTECTION);
        xml.close();
        return (y + 9) / 10 * 10;
    }

    private int legend(int y) {
        int x = MARGIN;
        sheet.stroke(PictureInk.TRUTH, x, y - 50, x + SWATCH, y - 50);
        sheet.words(x + SWATCH + 70, y, SIZE, "really left");
        x += SWATCH + 1_150;
        sheet.stroke(PictureInk.ofGauge(0), x, y - 50, x + SWATCH, y - 50);
        sheet.words(x + SWATCH + 70, y, SIZE, "your gauge");
        x += SWATCH + 1_150;
        sheet.box(x, y - 110, SWATCH, 120);
        sheet.words(x + SWATCH + 70, y, SIZE, "could be, after so many days");
        return y + 130;
    }

    private int strip(int top) {
        PictureCurve truth = curve(Course.Hour::truth);
        PictureCurve own = curve(Course.Hour::own);
        PictureCurve low = curve(hour -> within(hour.own() - growth(hour, true)));
        PictureCurve high = curve(hour -> within(hour.own() - growth(hour, false)));
        long lowest = Math.min(truth.lowest(), Math.min(own.lowest(), low.lowest()));
        long highest = Math.max(truth.highest(), Math.max(own.highest(), high.highest()));
        PictureScale scale =
                new PictureScale(
                        lowest, highest, PictureSeries.STATE_OF_CHARGE, LINES, top + 230, HEIGHT);
        sheet.words(PictureSheet.LEFT, top + 170, SIZE, "how full, %");
        sheet.area(low, high, clock, scale);
        rules(scale);
        sheet.curve(PictureInk.TRUTH, truth, clock, scale);
        sheet.curve(PictureInk.ofGauge(0), own, clock, scale);
        return mark(scale) + 60;
    }

    /** How far the truth may lie below what is shown, in millionths. */
    private long growth(Course.Hour hour, boolean atMost) {
        double days = (double) hour.atMillis() / DAY_MILLIS;
        double either = result.eitherWayPerDay();
        double points = (result.tooHighPerDay() + (atMost ? either : -either)) * days;
        return StrictMath.round(points * 1e4);
    }

    /** A battery holds no more than all and no less than nothing. */
    private static long within(long partsPerMillion) {
        return Math.max(0, Math.min(1_000_000, partsPerMillion));
    }

    private PictureCurve curve(ToLongFunction<Course.Hour> value) {
        PictureCurve curve = new PictureCurve(durationMillis);
        for (Course.Hour hour : result.course()) {
            curve.add(hour.atMillis(), value.applyAsLong(hour));
        }
        return curve;
    }

    private void rules(PictureScale scale) {
        int right = PictureSheet.LEFT + PictureSheet.FRAME;
        for (long value : scale.lines()) {
            int y = scale.y(value);
            sheet.stroke(RULE, PictureSheet.LEFT, y, right, y);
            sheet.wordsBefore(PictureSheet.LEFT - 75, y + SIZE / 3, SIZE, scale.label(value));
        }
        for (long moment : clock.lines()) {
            int x = clock.x(moment);
            sheet.stroke(RULE, x, scale.top(), x, scale.bottom());
            sheet.wordsAround(x, scale.bottom() + 190, SIZE, clock.label(moment));
        }
        sheet.stroke(FRAME, PictureSheet.LEFT, scale.bottom(), right, scale.bottom());
        String heading = clock.heading().replace("from the start", "from the full charge");
        sheet.words(PictureSheet.LEFT, scale.bottom() + 390, SIZE, heading);
    }

    private int mark(PictureScale scale) {
        long atMillis = result.daysWithinTen() * DAY_MILLIS;
        if (atMillis > 0 && atMillis <= durationMillis) {
            int x = clock.x(atMillis);
            sheet.stroke(MARK, x, scale.top(), x, scale.bottom());
            String words = "charge fully by day " + result.daysWithinTen();
            int width = PictureType.width(words, SIZE);
            boolean fits = x + 60 + width < PictureSheet.LEFT + PictureSheet.FRAME;
            if (fits) {
                sheet.words(x + 60, scale.top() + 190, SIZE, words);
            } else {
                sheet.wordsBefore(x - 60, scale.top() + 190, SIZE, words);
            }
        }
        return scale.bottom() + 450;
    }
}
