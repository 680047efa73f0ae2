package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.report.PicturePath.Place;
import org.gaugebench.sim.rig.Cause;
import org.jspecify.annotations.Nullable;

/**
 * The error of a gauge split by cause, as areas on each other over time: what makes it read high
 * stands above the line of zero, what makes it read low below it, and the line drawn over them, the
 * sum of all, is the error itself.
 *
 * <p>Each area bears its name where it has room for it, else the number that the legend explains,
 * so that none is told by its colour alone; the colours differ for eyes that see no red or green,
 * and in their lightness too.
 */
final class PictureCauses {
    private static final int SIZE = 140;
    private static final int ROW = 200;
    private static final int COLUMN = 2_500;
    private static final int LINE_COLUMN = 380;

    /** Room that a number needs, so that it does not stand on a neighbour's area. */
    private static final int ROOM = 190;

    private static final PictureInk EDGE = new PictureInk(PictureInk.TEXT, 5, "");
    private static final PictureInk SUM = new PictureInk(PictureInk.TEXT, 26, "");

    /** In the order of {@link Attribution#PLAIN}, then everything else. */
    private static final List<String> FILLS =
            List.of("#8cc5e3", "#f3b53f", "#4aa587", "#f5ea8f", "#d797bb", "#c9c6c0");

    private final List<Split> splits;

    /** From where to where something reaches: an area in millionths, or a space on the sheet. */
    private record Layer(long from, long to) {}

    PictureCauses(Attribution attribution) {
        splits = attribution.splits();
    }

    private static int count() {
        return Attribution.PLAIN.size() + 1;
    }

    /** In a few words: what stands before the colon. */
    private static String words(int index) {
        return index < Attribution.PLAIN.size()
                ? Attribution.PLAIN.get(index).words().split(":", -1)[0]
                : "everything else";
    }

    private static long part(Split split, int index) {
        if (index == Attribution.PLAIN.size()) {
            return split.elsePartsPerMillion();
        }
        Cause cause = Attribution.PLAIN.get(index);
        return split.partsPerMillion(cause);
    }

    /**
     * Those of one sign stand on each other, from zero outward; a part of the other sign has no
     * height there, so that one that changes its sign shrinks to nothing and grows on the far side.
     */
    private static Layer layer(Split split, int index, boolean up) {
        long from = 0;
        for (int i = 0; i < index; i++) {
            from += ofSign(part(split, i), up);
        }
        return new Layer(from, from + ofSign(part(split, index), up));
    }

    private static long ofSign(long part, boolean up) {
        return up == part > 0 ? part : 0;
    }

    private static long reach(Split split, boolean up) {
        long sum = 0;
        for (int i = 0; i < count(); i++) {
            sum += ofSign(part(split, i), up);
        }
        return sum;
    }

    long lowest() {
        return splits.stream()
                .filter(Split::known)
                .mapToLong(it -> reach(it, false))
                .min()
                .orElse(0);
    }

    long highest() {
        return splits.stream()
                .filter(Split::known)
                .mapToLong(it -> reach(it, true))
                .max()
                .orElse(0);
    }

    /** What each area is; the next free height. */
    static int legend(PictureSheet sheet, int from) {
        int y = from;
        for (int i = 0; i < count(); i++) {
            int x = PictureSheet.LEFT + (i % 2) * COLUMN;
            String number = Integer.toString(i + 1);
            sheet.box(x, y + 40, LINE_COLUMN - 120, 130, FILLS.get(i), EDGE);
            sheet.wordsAround(x + (LINE_COLUMN - 120) / 2, y + 155, SIZE, number);
            String words = words(i);
            sheet.words(x + LINE_COLUMN - 60, y + 155, SIZE, words);
            y += i % 2 == 1 ? ROW : 0;
        }
        sheet.stroke(
                SUM, PictureSheet.LEFT, y + 105, PictureSheet.LEFT + LINE_COLUMN - 120, y + 105);
        sheet.words(
                PictureSheet.LEFT + LINE_COLUMN - 60,
                y + 155,
                SIZE,
                "their sum: shown less true state of charge");
        return y + ROW + 60;
    }

    /** Stretches of time in which the gauge shows a charge. */
    private List<List<Split>> pieces() {
        List<List<Split>> pieces = new ArrayList<>();
        List<Split> piece = new ArrayList<>();
        for (Split split : splits) {
            if (split.known()) {
                piece.add(split);
            } else if (!piece.isEmpty()) {
                pieces.add(piece);
                piece = new ArrayList<>();
            }
        }
        if (!piece.isEmpty()) {
            pieces.add(piece);
        }
        return pieces;
    }

    void draw(PictureSheet sheet, PictureClock clock, PictureScale scale) {
        for (int i = 0; i < count(); i++) {
            StringBuilder data = new StringBuilder();
            for (List<Split> piece : pieces()) {
                for (boolean up : new boolean[] {true, false}) {
                    append(data, sides(piece, i, up, clock, scale));
                }
            }
            if (!data.isEmpty()) {
                sheet.filled(FILLS.get(i), EDGE, data.toString());
            }
        }
        int right = PictureSheet.LEFT + PictureSheet.FRAME;
        sheet.stroke(PictureInk.FRAMED, PictureSheet.LEFT, scale.y(0), right, scale.y(0));
        StringBuilder sum = new StringBuilder();
        for (List<Split> piece : pieces()) {
            List<Place> places = new ArrayList<>();
            for (Split split : piece) {
                places.add(
                        new Place(
                                clock.x(split.atMillis()), scale.y(split.errorPartsPerMillion())));
            }
            sum.append(PicturePath.line(PicturePath.simplified(places)));
        }
        if (!sum.isEmpty()) {
            sheet.path(SUM, sum.toString());
        }
        for (int i = 0; i < count(); i++) {
            label(i, sheet, clock, scale);
        }
    }

    /** The far and the near side of an area; empty where it has no height anywhere. */
    private static List<List<Place>> sides(
            List<Split> piece, int index, boolean up, PictureClock clock, PictureScale scale) {
        List<Place> far = new ArrayList<>();
        List<Place> near = new ArrayList<>();
        for (Split split : piece) {
            Layer layer = layer(split, index, up);
            int x = clock.x(split.atMillis());
            far.add(new Place(x, scale.y(layer.to())));
            near.add(new Place(x, scale.y(layer.from())));
        }
        return far.equals(near) ? List.of() : List.of(far, near);
    }

    private static void append(StringBuilder data, List<List<Place>> sides) {
        if (!sides.isEmpty()) {
            data.append(
                    PicturePath.area(
                            PicturePath.simplified(sides.get(0)),
                            PicturePath.simplified(sides.get(1))));
        }
    }

    /** Its name where the area is thick enough for that, else its number, else nothing. */
    private void label(int index, PictureSheet sheet, PictureClock clock, PictureScale scale) {
        String number = Integer.toString(index + 1);
        for (String text : List.of(number + " " + words(index), number)) {
            Place place = roomFor(PictureType.width(text, SIZE), index, clock, scale);
            if (place != null) {
                sheet.wordsAround(place.x(), place.y() + SIZE / 3, SIZE, text);
                return;
            }
        }
    }

    /** Where the area is thickest over a width and no line of the sum runs through it, or null. */
    private @Nullable Place roomFor(int width, int index, PictureClock clock, PictureScale scale) {
        int left = PictureSheet.LEFT + width / 2 + SIZE;
        int right = PictureSheet.LEFT + PictureSheet.FRAME - width / 2 - SIZE;
        int best = ROOM;
        Place place = null;
        for (Split middle : splits) {
            int x = clock.x(middle.atMillis());
            if (x < left || x > right) {
                continue;
            }
            for (boolean overSum : new boolean[] {true, false}) {
                Layer free = free(x, width, index, overSum, clock, scale);
                if (free.to() - free.from() > best) {
                    best = (int) (free.to() - free.from());
                    place = new Place(x, (int) (free.from() + free.to()) / 2);
                }
            }
        }
        return place;
    }

    /** What is free of the area all along a width, above or below the line of the sum. */
    private Layer free(
            int x, int width, int index, boolean overSum, PictureClock clock, PictureScale scale) {
        int top = Integer.MIN_VALUE;
        int bottom = Integer.MAX_VALUE;
        for (Split split : splits) {
            if (Math.abs(clock.x(split.atMillis()) - x) > width / 2 + SIZE / 2) {
                continue;
            }
            if (!split.known()) {
                return new Layer(0, 0);
            }
            Layer layer = layer(split, index, part(split, index) > 0);
            int sum = scale.y(split.errorPartsPerMillion());
            int above = scale.y(Math.max(layer.from(), layer.to()));
            int below = scale.y(Math.min(layer.from(), layer.to()));
            top = Math.max(top, overSum ? above : Math.max(above, sum));
            bottom = Math.min(bottom, overSum ? Math.min(below, sum) : below);
        }
        return new Layer(top, bottom);
    }
}
