package org.gaugebench.sim.report;

import java.util.List;

/**
 * A pen: colour, width in the picture's units and dashes. No line is told by its colour alone; the
 * colours are dark enough to stand on paper in grey, and differ for eyes that see no red or green.
 *
 * @param colour as SVG writes it
 * @param width in tenths of a pixel
 * @param dashes lengths of strokes and gaps; empty for a line without gaps
 */
record PictureInk(String colour, int width, String dashes) {
    static final String PAPER = "#fffdf6";
    static final String TEXT = "#1b1b1b";
    static final String RULE = "#c9d3d6";
    static final String MARGIN_RULE = "#c98f8f";
    static final String BAND = "#dbe5ee";
    static final PictureInk BAND_EDGE = new PictureInk("#6f87a0", 7, "");
    static final PictureInk RULED = new PictureInk(RULE, 7, "");
    static final PictureInk FRAMED = new PictureInk(TEXT, 8, "");
    static final PictureInk EVENT = new PictureInk("#5a5a5a", 8, "10 40");

    /** Broad and light, so that a thin line that lies on it is still seen. */
    static final PictureInk TRUTH = new PictureInk("#968d7b", 48, "");

    /** The same for a low strip, in which a current may go up and down at every pixel. */
    static final PictureInk TRUTH_SLIM = new PictureInk("#968d7b", 34, "");

    private static final List<PictureInk> GAUGES =
            List.of(
                    new PictureInk("#003f87", 17, ""),
                    new PictureInk("#a8380a", 19, "70 40"),
                    new PictureInk("#5e2a72", 21, "20 32"),
                    new PictureInk("#00583f", 19, "130 35 20 35"),
                    new PictureInk("#5a4300", 19, "220 60"),
                    new PictureInk("#2b2b2b", 19, "60 30 20 30 20 30"));

    /** The pen of a gauge, by its place in the scenario. */
    static PictureInk ofGauge(int index) {
        return GAUGES.get(index);
    }

    /** Gives an element that was just opened this pen. */
    void draw(XmlText xml) {
        xml.with("fill", "none").with("stroke", colour).with("stroke-width", width);
        if (!dashes.isEmpty()) {
            xml.with("stroke-dasharray", dashes);
        }
    }
}
