package org.gaugebench.sim.report;

/** One side of paper with a heading and a foot: what figures without a clock are drawn on. */
final class PictureSide {
    /** Left and right of everything. */
    static final int MARGIN = 140;

    private static final int TEXT_WIDTH = PictureSheet.WIDTH - 2 * MARGIN;
    private static final int HEADING_SIZE = 200;
    private static final int USUAL_SIZE = 150;
    private static final int FOOT_SIZE = 125;

    private final XmlText xml = new XmlText();
    private final PictureSheet sheet = new PictureSheet(xml);

    PictureSheet sheet() {
        return sheet;
    }

    /**
     * Begins.
     *
     * @param height of everything; 0 while it is not known
     * @param description what the picture says, for those who do not see it
     */
    void open(int height, String title, String description) {
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
        xml.open("title").with("id", "title").close(title);
        xml.open("desc").with("id", "desc").close(description);
        xml.open("path")
                .with("d", "M0 0h" + PictureSheet.WIDTH + "v" + height + "H0z")
                .with("fill", PictureInk.PAPER)
                .close();
    }

    /** The heading; the baseline of the line after it. */
    int heading(String words) {
        return sheet.paragraph(MARGIN, MARGIN + 170, HEADING_SIZE, TEXT_WIDTH, words);
    }

    /** A paragraph; the baseline of the line after it. */
    int paragraph(int baseline, String words) {
        return sheet.paragraph(MARGIN, baseline, USUAL_SIZE, TEXT_WIDTH, words);
    }

    /** The foot, and the end; the height of everything. */
    int close(int baseline, String words) {
        int y = sheet.paragraph(MARGIN, baseline + 130, FOOT_SIZE, TEXT_WIDTH, words);
        xml.close();
        return (y + 9) / 10 * 10;
    }

    @Override
    public String toString() {
        return xml.toString();
    }
}
