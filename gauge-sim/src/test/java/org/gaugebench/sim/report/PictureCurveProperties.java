package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gaugebench.sim.report.PictureCurve.Point;
import org.gaugebench.sim.report.PicturePath.Place;

/** What a picture keeps of a curve: every extreme, to the last place of its simplified line. */
class PictureCurveProperties {
    private static final long STEP_MILLIS = 1_000;

    private static PictureCurve curve(List<Integer> values) {
        PictureCurve curve = new PictureCurve((values.size() - 1) * STEP_MILLIS);
        for (int i = 0; i < values.size(); i++) {
            curve.add(i * STEP_MILLIS, values.get(i));
        }
        return curve;
    }

    @Property(tries = 200)
    void extremesSurviveHoweverLongTheRun(
            @ForAll @Size(min = 2, max = 5_000)
                    List<@IntRange(min = -900, max = 900) Integer> values,
            @ForAll @IntRange(min = 0, max = 4_999) int at,
            @ForAll boolean up) {
        List<Integer> spiked = new ArrayList<>(values);
        int spike = up ? 1_000 : -1_000;
        spiked.set(at % values.size(), spike);
        PictureCurve curve = curve(spiked);
        List<Point> points = curve.pieces().get(0);
        assertEquals(1, curve.pieces().size());
        assertTrue(points.contains(new Point(at % values.size() * STEP_MILLIS, spike)));
        PictureClock clock = new PictureClock((values.size() - 1) * STEP_MILLIS, 0, 5_600);
        PictureScale scale =
                new PictureScale(-1_000, 1_000, PictureSeries.TIME_TO_EMPTY, 9, 0, 2_000);
        List<Place> places = PicturePath.places(points, clock, scale);
        int y = scale.y(spike);
        assertTrue(
                places.stream().anyMatch(it -> StrictMath.abs(it.y() - y) <= 2), places.toString());
        for (int i = 1; i < points.size(); i++) {
            assertTrue(points.get(i).atMillis() >= points.get(i - 1).atMillis());
        }
    }

    @Property(tries = 100)
    void aStraightLineNeedsItsEndsOnly(
            @ForAll @IntRange(min = 2, max = 3_000) int size,
            @ForAll @IntRange(min = -50, max = 50) int slope) {
        List<Integer> values = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            values.add(i * slope);
        }
        PictureClock clock = new PictureClock((size - 1) * STEP_MILLIS, 0, 5_600);
        PictureCurve curve = curve(values);
        PictureScale scale =
                new PictureScale(
                        curve.lowest(), curve.highest(), PictureSeries.TIME_TO_EMPTY, 9, 0, 2_000);
        assertEquals(2, PicturePath.places(curve.pieces().get(0), clock, scale).size());
    }
}
