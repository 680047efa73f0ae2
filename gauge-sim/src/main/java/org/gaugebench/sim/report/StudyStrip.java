package org.gaugebench.sim.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Moment;

/**
 * The bands of a study over time as a drawing within a page: what it is made of has names, and the
 * page's style gives them colours, so that a dark page has a dark strip.
 */
final class StudyStrip {
    private static final int LINES = 9;
    private static final int HEIGHT = 300;
    private static final int TOP = 12;
    private static final int LEFT = 64;
    private static final int RIGHT = 12;

    private final StudySpec spec;
    private final CaseResult each;
    private final int width;
    private final PictureClock clock;
    private final PictureScale scale;
    private final StringBuilder svg = new StringBuilder();

    /**
     * Prepares.
     *
     * @param width in pixels; words keep their size
     */
    StudyStrip(StudySpec spec, CaseResult each, int width) {
        this.spec = spec;
        this.each = each;
        this.width = width;
        this.clock = new PictureClock(each.durationMillis(), LEFT, width - LEFT - RIGHT);
        this.scale = scale();
    }

    private PictureScale scale() {
        double lowest = 0;
        double highest = 0;
        for (Moment moment : each.moments()) {
            for (double value :
                    new double[] {
                        moment.percentiles()[Moment.SMALLEST],
                        moment.percentiles()[Moment.LARGEST],
                        moment.firstLimits().lower(),
                        moment.firstLimits().upper()
                    }) {
                if (Double.isFinite(value)) {
                    lowest = StrictMath.min(lowest, value);
                    highest = StrictMath.max(highest, value);
                }
            }
        }
        return new PictureScale(
                (long) StrictMath.floor(lowest),
                (long) StrictMath.ceil(highest),
                StudyFigures.shift(spec.unit()),
                10,
                LINES,
                TOP,
                HEIGHT);
    }

    /**
     * Draws.
     *
     * @param words what the drawing says, for those who do not see it; made safe already
     * @param style class of the drawing
     */
    String draw(String words, String style) {
        int height = TOP + HEIGHT + 28;
        svg.append(
                ("<svg class=\"plot %s\" viewBox=\"0 0 %s %s\" width=\"%s\" height=\"%s\""
                                + " role=\"img\"")
                        .formatted(style, width, height, width, height));
        svg.append(" aria-label=\"").append(words).append("\">\n");
        area();
        rules();
        line("zero", clock.x(0), scale.y(0), width - RIGHT, scale.y(0));
        curve("extreme", it -> it.percentiles()[Moment.SMALLEST]);
        curve("extreme", it -> it.percentiles()[Moment.LARGEST]);
        curve("half", it -> it.percentiles()[Moment.QUARTER]);
        curve("half", it -> it.percentiles()[Moment.THREE_QUARTERS]);
        curve("first", it -> it.firstLimits().lower());
        curve("first", it -> it.firstLimits().upper());
        curve("median", it -> it.percentiles()[Moment.MEDIAN]);
        return svg.append("</svg>").toString();
    }

    private void rules() {
        for (long value : scale.lines()) {
            int y = scale.y(value);
            line("rule", LEFT, y, width - RIGHT, y);
            text(LEFT - 8, y + 5, "end", scale.label(value));
        }
        List<Long> moments = clock.lines();
        // On a telephone every second label would touch the next.
        int every = moments.size() > 6 && width < 500 ? 2 : 1;
        for (int i = 0; i < moments.size(); i++) {
            int x = clock.x(moments.get(i));
            line("rule", x, scale.top(), x, scale.bottom());
            if (i % every == 0) {
                text(x, scale.bottom() + 20, "middle", clock.label(moments.get(i)));
            }
        }
        line("frame", LEFT, scale.bottom(), width - RIGHT, scale.bottom());
    }

    private void area() {
        StringBuilder there = new StringBuilder();
        StringBuilder back = new StringBuilder();
        for (Moment moment : each.moments()) {
            double lower = moment.limits().lower();
            double upper = moment.limits().upper();
            if (Double.isNaN(lower) || Double.isNaN(upper)) {
                // A gap would need two areas; the limits as lines are drawn in any case.
                continue;
            }
            there.append(there.isEmpty() ? 'M' : 'L').append(point(moment, upper));
            back.insert(0, "L" + point(moment, lower));
        }
        if (!there.isEmpty()) {
            path("band", there.append(back).append('z').toString());
        }
    }

    private void curve(String style, ToDoubleFunction<Moment> of) {
        StringBuilder data = new StringBuilder();
        boolean isOpen = false;
        for (Moment moment : each.moments()) {
            double value = of.applyAsDouble(moment);
            if (Double.isFinite(value)) {
                data.append(isOpen ? 'L' : 'M').append(point(moment, value));
            }
            isOpen = Double.isFinite(value);
        }
        if (!data.isEmpty()) {
            path(style, data.toString());
        }
    }

    private String point(Moment moment, double value) {
        return clock.x(moment.atMillis()) + " " + scale.y(StrictMath.round(value));
    }

    private void path(String style, String data) {
        svg.append("<path class=\"").append(style).append("\" d=\"").append(data).append("\"/>\n");
    }

    private void line(String style, int fromX, int fromY, int toX, int toY) {
        path(style, "M" + fromX + " " + fromY + "L" + toX + " " + toY);
    }

    private void text(int x, int y, String anchor, String words) {
        svg.append("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\">".formatted(x, y, anchor));
        svg.append(words).append("</text>\n");
    }

    /** What stands under the axis. */
    String heading() {
        return clock.heading();
    }
}
