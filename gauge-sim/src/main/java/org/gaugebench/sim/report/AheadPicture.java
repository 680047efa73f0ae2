package org.gaugebench.sim.report;

import java.util.List;
import java.util.function.ToLongFunction;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.MonthAheadResult;

/**
 * The month ahead as a still picture: what the owner's gauge shows against what is left, how far
 * off it could be, and the day by which to charge fully.
 */
public final class AheadPicture {
    private static final int SIZE = PictureSide.USUAL_SIZE;
    private static final int HEIGHT = 2_100;
    private static final int LINES = 9;
    private static final List<String> NAMES =
            List.of("really left", "your gauge", "could be, after so many days");
    private static final long DAY_MILLIS = 86_400_000;
    private static final PictureInk MARK = new PictureInk(PictureInk.TEXT, 22, "90 50");

    private final MonthAheadResult result;
    private final PictureSide side;
    private final PictureSheet sheet;
    private final long durationMillis;
    private final PictureClock clock;

    private AheadPicture(MonthAheadResult result, PictureSide side) {
        this.result = result;
        this.side = side;
        sheet = side.sheet();
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
        return PictureSide.of(side -> new AheadPicture(result, side).draw());
    }

    private int draw() {
        String answer = AheadText.answer(result);
        side.open("The month ahead without a full charge", answer);
        int y = side.heading(answer);
        y = side.legend(y, NAMES, this::swatch);
        return side.close(strip(y), "Simulated. " + Cautions.NO_PROTECTION);
    }

    private void swatch(int index, int x, int y, int width) {
        if (index == 2) {
            sheet.box(x, y - 60, width, 120);
        } else {
            PictureInk ink = index == 0 ? PictureInk.TRUTH : PictureInk.ofGauge(0);
            sheet.stroke(ink, x, y, x + width, y);
        }
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
        PictureGrid grid = new PictureGrid(sheet, clock, scale);
        grid.rules();
        grid.floor();
        sheet.curve(PictureInk.TRUTH, truth, clock, scale);
        sheet.curve(PictureInk.ofGauge(0), own, clock, scale);
        mark(scale);
        String heading = clock.heading().replace("from the start", "from the full charge");
        return PictureGrid.axis(sheet, clock, heading, scale.bottom()) + 60;
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

    private void mark(PictureScale scale) {
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
    }
}
