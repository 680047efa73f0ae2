package org.gaugebench.sim.report;

/** The ruled frame of a strip, and the time below it. */
final class PictureGrid {
    private static final int LEFT = PictureSheet.LEFT;
    private static final int RIGHT = PictureSheet.LEFT + PictureSheet.FRAME;
    private static final int SIZE = PictureSide.USUAL_SIZE;

    private final PictureSheet sheet;
    private final PictureClock clock;
    private final PictureScale scale;

    PictureGrid(PictureSheet sheet, PictureClock clock, PictureScale scale) {
        this.sheet = sheet;
        this.clock = clock;
        this.scale = scale;
    }

    /** Lines at round values, each with its figure, and at round moments. */
    void rules() {
        for (long value : scale.lines()) {
            int y = scale.y(value);
            sheet.stroke(PictureInk.RULED, LEFT, y, RIGHT, y);
            String label = scale.label(value);
            int size = PictureType.fitting(label, SIZE, LEFT - 85);
            sheet.wordsBefore(LEFT - 75, y + size / 3, size, label);
        }
        for (long moment : clock.lines()) {
            int x = clock.x(moment);
            sheet.stroke(PictureInk.RULED, x, scale.top(), x, scale.bottom());
        }
    }

    /** The lower edge. */
    void floor() {
        sheet.stroke(PictureInk.FRAMED, LEFT, scale.bottom(), RIGHT, scale.bottom());
    }

    /**
     * The time below the lowest strip.
     *
     * @param heading what is counted, and from when
     * @param from where the room for it begins
     * @return the next free height
     */
    static int axis(PictureSheet sheet, PictureClock clock, String heading, int from) {
        int right = PictureSheet.WIDTH - 20;
        for (long moment : clock.lines()) {
            String label = clock.label(moment);
            int half = (PictureType.width(label, SIZE) + 1) / 2;
            sheet.wordsAround(Math.min(clock.x(moment), right - half), from + 190, SIZE, label);
        }
        sheet.words(LEFT, from + 390, SIZE, heading);
        return from + 450;
    }
}
