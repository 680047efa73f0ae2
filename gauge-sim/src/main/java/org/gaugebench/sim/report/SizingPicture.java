package org.gaugebench.sim.report;

import java.util.function.ToDoubleFunction;
import org.gaugebench.sim.advice.ShuntChoice;
import org.gaugebench.sim.advice.SizingResult;

/**
 * The choice of a shunt as a still picture: drop and heat, which a larger one lowers, against what
 * a microvolt of offset costs, which it raises; the proposed one between its neighbours.
 */
public final class SizingPicture {
    private static final int SIZE = PictureSide.USUAL_SIZE;
    private static final int ROW = 240;
    private static final int BAR = 150;
    private static final int LEFT = 1_500;
    private static final int WIDTH = 3_900;
    private static final PictureInk CHOSEN = PictureInk.ofGauge(0);

    private final SizingResult result;
    private final String version;
    private final PictureSide side;
    private final PictureSheet sheet;

    private SizingPicture(SizingResult result, String version, PictureSide side) {
        this.result = result;
        this.version = version;
        this.side = side;
        sheet = side.sheet();
    }

    /**
     * Draws a sizing.
     *
     * @param result with or without a shunt that fits
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(SizingResult result, String version) {
        return PictureSide.of(side -> new SizingPicture(result, version, side).draw());
    }

    private int draw() {
        String answer = SizingText.answer(result);
        side.open("Which shunt", answer + " " + description());
        int y = side.heading(answer);
        y =
                panel(
                        y + 80,
                        "drop at the current that flows for hours, mV",
                        ShuntChoice::steadyMillivolts);
        y = panel(y + 160, "heat at that current, W", ShuntChoice::steadyWatts);
        y =
                panel(
                        y + 160,
                        "what 1 \u00b5V of offset costs, % of this battery per month",
                        ShuntChoice::microvoltPercentPerMonth);
        return side.close(
                y + 110,
                "Dark: %s. A larger shunt stays cooler and sees less. gauge-sim %s. %s"
                        .formatted(
                                result.chosen() == null
                                        ? "none fits"
                                        : result.chosen().equals(result.proposed())
                                                ? "the proposed one"
                                                : "the one that is there",
                                version,
                                Cautions.DEFER));
    }

    private String description() {
        StringBuilder text = new StringBuilder();
        for (ShuntChoice each : result.choices()) {
            text.append(text.isEmpty() ? "" : "; ").append(each.rating());
            text.append(": ").append(SizingText.figures(each.steadyMillivolts())).append(" mV, ");
            text.append(SizingText.figures(each.steadyWatts())).append(" W, ");
            text.append(SizingText.figures(each.microvoltPercentPerMonth()));
            text.append(" % a month");
        }
        return text.append('.').toString();
    }

    private int panel(int from, String heading, ToDoubleFunction<ShuntChoice> of) {
        double most = result.choices().stream().mapToDouble(of).max().orElse(1);
        PictureAxis axis = new PictureAxis(most, LEFT, WIDTH);
        sheet.words(PictureSide.MARGIN, from + 150, SIZE, heading);
        int top = from + 250;
        int bottom = top + ROW * result.choices().size();
        for (int i = 0; i <= axis.count(); i++) {
            int x = axis.x(axis.value(i));
            sheet.stroke(PictureInk.RULED, x, top, x, bottom);
            sheet.wordsAround(x, bottom + 190, SIZE, axis.label(i));
        }
        int y = top;
        for (ShuntChoice each : result.choices()) {
            row(each, y, axis, of.applyAsDouble(each));
            y += ROW;
        }
        sheet.stroke(PictureInk.FRAMED, LEFT, top, LEFT, bottom);
        return bottom + 190;
    }

    private void row(ShuntChoice each, int top, PictureAxis axis, double value) {
        boolean isChosen = each.rating().equals(result.chosen());
        int baseline = top + (ROW + SIZE) / 2 - 20;
        sheet.words(PictureSide.MARGIN, baseline, SIZE, (isChosen ? "* " : "") + each.rating());
        int width = Math.max(12, axis.x(value) - LEFT);
        int y = top + (ROW - BAR) / 2;
        if (isChosen) {
            sheet.box(LEFT, y, width, BAR, CHOSEN.colour(), CHOSEN);
        } else {
            sheet.box(LEFT, y, width, BAR);
        }
        String words = SizingText.figures(value);
        if (each.fit() != ShuntChoice.Fit.FITS) {
            words += " (" + SizingText.shortFit(each.fit()) + ")";
        }
        sheet.words(LEFT + width + 70, baseline, SIZE, words);
    }
}
