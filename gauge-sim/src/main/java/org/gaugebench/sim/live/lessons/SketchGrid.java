package org.gaugebench.sim.live.lessons;

import org.gaugebench.sim.judge.Figures;

/** Empty axes as SVG: time from the run, the upright axis from the lesson. */
final class SketchGrid {
    private static final int WIDTH = 1000;
    private static final int HEIGHT = 430;
    private static final int LEFT = 90;
    private static final int TOP = 34;
    private static final int RIGHT = WIDTH - 34;
    private static final int BOTTOM = HEIGHT - 40;
    private static final int ROWS = 4;
    private static final int MOST_COLUMNS = 8;
    private static final long[] STEPS_MILLIS = {
        60_000,
        900_000,
        1_800_000,
        3_600_000,
        7_200_000,
        21_600_000,
        43_200_000,
        86_400_000,
        172_800_000,
        432_000_000
    };

    private SketchGrid() {}

    /**
     * Draws the axes.
     *
     * @param sketch the upright axis
     * @param durationMillis of the run
     * @param axis what the upright axis shows, with its unit
     * @param time what the level axis shows
     */
    static String of(Sketch sketch, long durationMillis, String axis, String time, Words words) {
        StringBuilder out = new StringBuilder();
        out.append("<svg class=\"sketch\" viewBox=\"0 0 ")
                .append(WIDTH + " " + HEIGHT)
                .append("\" role=\"img\" aria-label=\"")
                .append(Html.safe(axis + "; " + time))
                .append("\">\n");
        label(out, LEFT - 74, 20, "start", axis);
        for (int i = 0; i <= ROWS; i++) {
            long value = sketch.lowest() + (sketch.highest() - sketch.lowest()) * i / ROWS;
            int y = BOTTOM - (BOTTOM - TOP) * i / ROWS;
            line(out, LEFT, y, RIGHT, y);
            label(out, LEFT - 10, y + 6, "end", number(sketch.unit(), value, words));
        }
        long step = STEPS_MILLIS[STEPS_MILLIS.length - 1];
        for (int i = STEPS_MILLIS.length - 1; i >= 0; i--) {
            step = durationMillis / STEPS_MILLIS[i] <= MOST_COLUMNS ? STEPS_MILLIS[i] : step;
        }
        for (long at = 0; at <= durationMillis; at += step) {
            int x = (int) (LEFT + (RIGHT - LEFT) * at / durationMillis);
            line(out, x, TOP, x, BOTTOM);
            label(out, x, BOTTOM + 24, "middle", at == 0 ? "0" : Figures.duration(at));
        }
        label(out, RIGHT, 20, "end", time + " →");
        return out.append("</svg>\n").toString();
    }

    private static String number(FigureUnit unit, long value, Words words) {
        return unit == FigureUnit.MINUTES
                ? Figures.decimal(value / 60, 0, 0)
                : unit.number(value, 0, words);
    }

    private static void line(StringBuilder out, int x1, int y1, int x2, int y2) {
        out.append("<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\"/>\n".formatted(x1, y1, x2, y2));
    }

    private static void label(StringBuilder out, int x, int y, String anchor, String words) {
        out.append("<text x=\"%d\" y=\"%d\" text-anchor=\"%s\">".formatted(x, y, anchor))
                .append(Html.safe(words))
                .append("</text>\n");
    }
}
