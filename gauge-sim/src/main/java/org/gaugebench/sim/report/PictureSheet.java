package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.report.PictureCurve.Point;

/** The sheet of paper of a picture: rules, lines and words put on it, from above downward. */
final class PictureSheet {
    /** Width in tenths of a pixel. */
    static final int WIDTH = 6_400;

    /** Where the frames begin; what stands left of it is figures. */
    static final int LEFT = 660;

    /** Width of the frames: ten units for each column of a curve. */
    static final int FRAME = 10 * PictureCurve.COLUMNS;

    private final XmlText xml;

    PictureSheet(XmlText xml) {
        this.xml = xml;
    }

    /** Words that begin at x. */
    void words(int x, int baseline, int size, String text) {
        type(x, baseline, size, text, "start");
    }

    /** Words that end at x. */
    void wordsBefore(int x, int baseline, int size, String text) {
        type(x, baseline, size, text, "end");
    }

    /** Words around x. */
    void wordsAround(int x, int baseline, int size, String text) {
        type(x, baseline, size, text, "middle");
    }

    private void type(int x, int baseline, int size, String text, String anchor) {
        xml.open("text").with("x", x).with("y", baseline).with("font-size", size);
        if (!anchor.equals("start")) {
            xml.with("text-anchor", anchor);
        }
        xml.close(text);
    }

    /** Words in several lines; the baseline of the line after them. */
    int paragraph(int x, int baseline, int size, int width, String text) {
        int y = baseline;
        for (String line : PictureType.wrap(text.replace(" %", "\u00a0%"), size, width)) {
            words(x, y, size, line);
            y += size * 4 / 3;
        }
        return y;
    }

    /** A straight line. */
    void stroke(PictureInk ink, int fromX, int fromY, int toX, int toY) {
        path(ink, "M" + fromX + " " + fromY + "L" + toX + " " + toY);
    }

    void path(PictureInk ink, String data) {
        xml.open("path").with("d", data);
        ink.draw(xml);
        xml.close();
    }

    /** A curve, in as many pieces as it has. */
    void curve(PictureInk ink, PictureCurve curve, PictureClock clock, PictureScale y) {
        StringBuilder data = new StringBuilder();
        for (List<Point> piece : curve.pieces()) {
            data.append(PicturePath.line(PicturePath.places(piece, clock, y)));
        }
        if (!data.isEmpty()) {
            path(ink, data.toString());
        }
    }

    /** The area between two curves; both are known at the same moments. */
    void area(PictureCurve lower, PictureCurve upper, PictureClock clock, PictureScale y) {
        List<List<Point>> above = upper.pieces();
        List<List<Point>> below = lower.pieces();
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < Math.min(above.size(), below.size()); i++) {
            data.append(
                    PicturePath.area(
                            PicturePath.places(above.get(i), clock, y),
                            PicturePath.places(below.get(i), clock, y)));
        }
        if (!data.isEmpty()) {
            xml.open("path").with("d", data.toString()).with("fill", PictureInk.BAND).close();
            curve(PictureInk.BAND_EDGE, lower, clock, y);
            curve(PictureInk.BAND_EDGE, upper, clock, y);
        }
    }

    /** A small filled box, as in a legend: that of the band. */
    void box(int x, int y, int width, int height) {
        box(x, y, width, height, PictureInk.BAND, PictureInk.BAND_EDGE);
    }

    /** A small filled box of any colour. */
    void box(int x, int y, int width, int height, String colour, PictureInk edge) {
        String data = "M" + x + " " + y + "h" + width + "v" + height + "h" + -width + "z";
        filled(colour, edge, data);
    }

    /** An area with an edge. */
    void filled(String colour, PictureInk edge, String data) {
        xml.open("path")
                .with("d", data)
                .with("fill", colour)
                .with("stroke", edge.colour())
                .with("stroke-width", edge.width())
                .close();
    }
}
