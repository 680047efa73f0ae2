package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A line as the path data of an SVG: whole numbers, each relative to the one before. Points that
 * lie within {@value #TOLERANCE} units of the line through their neighbours are left out, so that a
 * point that stands out, such as a spike, always stays.
 */
final class PicturePath {
    /** A fifth of a pixel: less than the thinnest pen. */
    static final int TOLERANCE = 2;

    /**
     * A place on the picture.
     *
     * @param x from the left, in tenths of a pixel
     * @param y from above
     */
    record Place(int x, int y) {}

    private PicturePath() {}

    /** Where the points of a curve's piece stand. */
    static List<Place> places(List<PictureCurve.Point> points, PictureClock clock, PictureScale y) {
        List<Place> places = new ArrayList<>();
        for (PictureCurve.Point point : points) {
            places.add(new Place(clock.x(point.atMillis()), y.y(point.value())));
        }
        return simplified(places);
    }

    /** The same line with fewer points. */
    static List<Place> simplified(List<Place> places) {
        boolean[] kept = new boolean[places.size()];
        kept[0] = true;
        kept[places.size() - 1] = true;
        keepFar(places, 0, places.size() - 1, kept);
        List<Place> few = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            if (kept[i] && (few.isEmpty() || !few.get(few.size() - 1).equals(places.get(i)))) {
                few.add(places.get(i));
            }
        }
        return few;
    }

    /** The method of Ramer, Douglas and Peucker; no root is drawn, so it is exact. */
    private static void keepFar(List<Place> places, int from, int to, boolean[] kept) {
        long farthest = 0;
        int at = -1;
        for (int i = from + 1; i < to; i++) {
            long distance = distanceSquaredTimesLengthSquared(places, from, to, i);
            if (distance > farthest) {
                farthest = distance;
                at = i;
            }
        }
        long length = Math.max(1, lengthSquared(places.get(from), places.get(to)));
        if (at >= 0 && farthest > (long) TOLERANCE * TOLERANCE * length) {
            kept[at] = true;
            keepFar(places, from, at, kept);
            keepFar(places, at, to, kept);
        }
    }

    private static long distanceSquaredTimesLengthSquared(
            List<Place> places, int from, int to, int at) {
        Place a = places.get(from);
        Place b = places.get(to);
        Place p = places.get(at);
        if (a.equals(b)) {
            return lengthSquared(a, p);
        }
        // A point beyond an end is as far as that end, although it lies on the same straight line.
        long along = (long) (p.x - a.x) * (b.x - a.x) + (long) (p.y - a.y) * (b.y - a.y);
        long length = lengthSquared(a, b);
        if (along < 0) {
            return lengthSquared(a, p) * length;
        }
        if (along > length) {
            return lengthSquared(b, p) * length;
        }
        long cross = (long) (b.x - a.x) * (p.y - a.y) - (long) (b.y - a.y) * (p.x - a.x);
        return cross * cross;
    }

    private static long lengthSquared(Place a, Place b) {
        long across = (long) b.x - a.x;
        long down = (long) b.y - a.y;
        return across * across + down * down;
    }

    /** Path data of an open line; a lone point becomes a short stroke. */
    static String line(List<Place> places) {
        StringBuilder text = new StringBuilder();
        append(text, places);
        if (places.size() == 1) {
            text.append("h10");
        }
        return text.toString();
    }

    private static void append(StringBuilder text, List<Place> places) {
        Place last = places.get(0);
        text.append('M').append(last.x).append(' ').append(last.y);
        for (Place place : places.subList(1, places.size())) {
            int across = place.x - last.x;
            int down = place.y - last.y;
            if (down == 0) {
                text.append('h').append(across);
            } else if (across == 0) {
                text.append('v').append(down);
            } else {
                text.append('l').append(across).append(down < 0 ? "" : " ").append(down);
            }
            last = place;
        }
    }

    /** Path data of the area between two lines. */
    static String area(List<Place> upper, List<Place> lower) {
        List<Place> round = new ArrayList<>(upper);
        for (int i = lower.size() - 1; i >= 0; i--) {
            round.add(lower.get(i));
        }
        StringBuilder text = new StringBuilder();
        append(text, round);
        return text.append('z').toString();
    }
}
