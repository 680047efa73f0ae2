package org.gaugebench.sim.report;

import java.util.List;
import java.util.function.ToIntFunction;

/** One side of paper with a heading and a foot: what every still picture is drawn on. */
final class PictureSide {
    /** Left and right of everything. */
    static final int MARGIN = 140;

    /** Room for words between the margins. */
    static final int TEXT_WIDTH = PictureSheet.WIDTH - 2 * MARGIN;

    /** Type of labels and legends. */
    static final int USUAL_SIZE = 150;

    /** Type of what stands under a picture. */
    static final int FOOT_SIZE = 125;

    private static final int TITLE_SIZE = 210;
    private static final int HEADING_SIZE = 200;
    private static final int SWATCH = 380;

    /** Draws what a line of a legend stands for. */
    interface Swatch {
        void draw(int index, int x, int y, int width);
    }

    private final XmlText xml = new XmlText();
    private final PictureSheet sheet = new PictureSheet(xml);
    private final int height;

    private PictureSide(int height) {
        this.height = height;
    }

    /**
     * Draws a picture.
     *
     * @param drawing begins and ends the side, and says how high it has become
     * @return a whole SVG document
     */
    static String of(ToIntFunction<PictureSide> drawing) {
        // The height stands in the first line and is known when all is drawn.
        PictureSide drawn = new PictureSide(drawing.applyAsInt(new PictureSide(0)));
        int again = drawing.applyAsInt(drawn);
        if (again != drawn.height) {
            throw new IllegalStateException("drawn " + drawn.height + " high, then " + again);
        }
        return drawn.xml.toString();
    }

    PictureSheet sheet() {
        return sheet;
    }

    /**
     * Begins.
     *
     * @param description what the picture says, for those who do not see it
     */
    void open(String title, String description) {
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

    /** The title of a run or a study; the baseline of the line after it. */
    int title(String words) {
        return sheet.paragraph(MARGIN, MARGIN + 180, TITLE_SIZE, TEXT_WIDTH, words);
    }

    /** An answer as the heading; the baseline of the line after it. */
    int heading(String words) {
        return sheet.paragraph(MARGIN, MARGIN + 170, HEADING_SIZE, TEXT_WIDTH, words);
    }

    /** A paragraph; the baseline of the line after it. */
    int paragraph(int baseline, String words) {
        return sheet.paragraph(MARGIN, baseline, USUAL_SIZE, TEXT_WIDTH, words);
    }

    /** What each line is, in as many rows as it takes; the next free height. */
    int legend(int baseline, List<String> names, Swatch swatch) {
        int x = MARGIN;
        int y = baseline;
        for (int i = 0; i < names.size(); i++) {
            int width = SWATCH + 70 + PictureType.width(names.get(i), USUAL_SIZE);
            if (x > MARGIN && x + width > PictureSheet.WIDTH - MARGIN) {
                x = MARGIN;
                y += 210;
            }
            swatch.draw(i, x, y - 50, SWATCH);
            sheet.words(x + SWATCH + 70, y, USUAL_SIZE, names.get(i));
            x += width + 180;
        }
        return y + 90;
    }

    /** The foot, and the end; the height of everything. */
    int close(int baseline, String words) {
        return close(sheet.paragraph(MARGIN, baseline + 130, FOOT_SIZE, TEXT_WIDTH, words));
    }

    /** The end; the height of everything. */
    int close(int bottom) {
        xml.close();
        return (bottom + 9) / 10 * 10;
    }
}
