package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.tune.TuneReason;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneScore;
import org.gaugebench.sim.tune.TunedSetting;

/**
 * What a search tried as a still picture: above, each try by its mean error and its false fulls,
 * those on the frontier in squares; below, each setting along its safe range, and what stops it on
 * either side.
 */
public final class TunePicture {
    private static final int SIZE = PictureSide.USUAL_SIZE;
    private static final int HEIGHT = 2_000;
    private static final int ROW = 540;
    private static final int RIGHT = PictureSheet.LEFT + PictureSheet.FRAME;
    private static final long[] COUNTS = {0, 1, 3, 10, 30, 100, 300, 1_000, 3_000, 10_000, 30_000};
    private static final PictureInk TRIED = new PictureInk("#5a5a5a", 9, "");
    private static final PictureInk CHOSEN = PictureInk.ofGauge(0);
    private static final PictureInk PRESET = new PictureInk("#a8380a", 19, "");

    private final TuneResult result;
    private final String version;
    private final PictureSide side;
    private final PictureSheet sheet;

    private TunePicture(TuneResult result, String version, PictureSide side) {
        this.result = result;
        this.version = version;
        this.side = side;
        sheet = side.sheet();
    }

    /**
     * Draws a search.
     *
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(TuneResult result, String version) {
        return PictureSide.of(side -> new TunePicture(result, version, side).draw());
    }

    private int draw() {
        String title = "The full-charge rule for " + TuneWords.battery(result);
        side.open(title, TuneWords.answer(result));
        int y = side.heading(title);
        y = side.paragraph(y, TuneWords.answer(result));
        y = legend(y + 60);
        y = tries(y + 60);
        y = settings(y + 200);
        return side.close(
                y + 60,
                "Simulated; %s settings, %s runs, search seed %s, gauge-sim %s. %s"
                        .formatted(
                                result.tried().size(),
                                result.runs(),
                                result.task().seed(),
                                version,
                                "The sheet of the battery's maker goes before it."));
    }

    private int legend(int y) {
        int x = PictureSide.MARGIN;
        mark(x + 60, y - 50, TRIED, false);
        sheet.words(x + 170, y, SIZE, "tried");
        mark(x + 760, y - 50, TRIED, true);
        sheet.words(x + 870, y, SIZE, "tried, a full missed");
        square(x + 2_400, y - 50);
        sheet.words(x + 2_530, y, SIZE, "on the frontier");
        ring(x + 3_790, y - 50, PRESET, 85);
        sheet.words(x + 3_920, y, SIZE, "preset");
        dot(x + 4_560, y - 50);
        sheet.words(x + 4_660, y, SIZE, "chosen");
        diamond(x + 5_300, y - 50);
        sheet.words(x + 5_430, y, SIZE, "loosest");
        return y + 130;
    }

    private int tries(int from) {
        double most = result.loosest().meanErrorParts();
        long mostFalse = 1;
        for (TuneScore each : result.tried()) {
            most = Math.max(most, each.meanErrorParts());
            mostFalse = Math.max(mostFalse, each.falseFulls());
        }
        PictureAxis across = new PictureAxis(most / 1e4, PictureSheet.LEFT, PictureSheet.FRAME);
        sheet.words(PictureSheet.LEFT, from + 130, SIZE, "false fulls in all runs");
        int top = from + 200;
        int bottom = top + HEIGHT;
        double decades = StrictMath.log1p(mostFalse * 1.3);
        for (long count : COUNTS) {
            if (count <= mostFalse * 1.3) {
                int y = y(count, decades, bottom);
                sheet.stroke(PictureInk.RULED, PictureSheet.LEFT, y, RIGHT, y);
                sheet.wordsBefore(
                        PictureSheet.LEFT - 75, y + SIZE / 3, SIZE, String.valueOf(count));
            }
        }
        for (int i = 0; i <= across.count(); i++) {
            int x = across.x(across.value(i));
            sheet.stroke(PictureInk.RULED, x, top, x, bottom);
            sheet.wordsAround(x, bottom + 200, SIZE, across.label(i));
        }
        sheet.stroke(PictureInk.FRAMED, PictureSheet.LEFT, bottom, RIGHT, bottom);
        sheet.words(PictureSheet.LEFT, bottom + 400, SIZE, "mean error of the runs, points");
        for (TuneScore each : result.tried()) {
            mark(
                    across.x(each.meanErrorParts() / 1e4),
                    y(each.falseFulls(), decades, bottom),
                    TRIED,
                    each.missedFulls() > 0);
        }
        for (TuneScore each : result.frontier()) {
            square(across.x(each.meanErrorParts() / 1e4), y(each.falseFulls(), decades, bottom));
        }
        TuneScore loosest = result.loosest();
        diamond(across.x(loosest.meanErrorParts() / 1e4), y(loosest.falseFulls(), decades, bottom));
        TuneScore preset = result.preset();
        ring(
                across.x(preset.meanErrorParts() / 1e4),
                y(preset.falseFulls(), decades, bottom),
                PRESET,
                85);
        TuneScore chosen = result.chosen();
        dot(across.x(chosen.meanErrorParts() / 1e4), y(chosen.falseFulls(), decades, bottom));
        return bottom + 450;
    }

    /** Counts differ most where they are small: none and one are worlds apart. */
    private static int y(long count, double decades, int bottom) {
        return bottom - (int) StrictMath.round(StrictMath.log1p((double) count) / decades * HEIGHT);
    }

    private int settings(int from) {
        int y =
                side.paragraph(
                        from,
                        "Each setting along its safe range, the others as chosen, and what another"
                                + " value brings");
        y += 130;
        for (TuneReason reason : result.reasons()) {
            row(reason, y);
            y += ROW;
        }
        return y - ROW + 240;
    }

    private void row(TuneReason reason, int y) {
        TunedSetting setting = reason.setting();
        String label = setting.setting().key();
        sheet.words(PictureSide.MARGIN, y + 45, PictureType.fitting(label, SIZE, 1_300), label);
        int left = PictureSheet.LEFT + 1_000;
        List<TuneReason.Step> profile = reason.profile();
        int pitch = (RIGHT - 260 - left) / Math.max(1, profile.size() - 1);
        sheet.stroke(PictureInk.FRAMED, left, y, left + pitch * (profile.size() - 1), y);
        for (int i = 0; i < profile.size(); i++) {
            TuneReason.Step step = profile.get(i);
            int x = left + pitch * i;
            sheet.stroke(PictureInk.FRAMED, x, y - 40, x, y + 40);
            sheet.wordsAround(x, y - 110, 130, TuneWords.value(setting, step.value()));
            sheet.wordsAround(x, y + 200, 125, brief(step.score()));
        }
        ring(place(reason, setting.preset(), left, pitch), y, PRESET, 85);
        dot(place(reason, reason.value(), left, pitch), y);
    }

    /** Where a value stands between steps that stand evenly. */
    private static int place(TuneReason reason, long value, int left, int pitch) {
        List<TuneReason.Step> profile = reason.profile();
        for (int i = 1; i < profile.size(); i++) {
            long below = profile.get(i - 1).value();
            long above = profile.get(i).value();
            if (value <= above) {
                return left
                        + pitch * (i - 1)
                        + (int) (pitch * Math.max(0, value - below) / Math.max(1, above - below));
            }
        }
        return left + pitch * (profile.size() - 1);
    }

    private String brief(TuneScore score) {
        TuneScore chosen = result.chosen();
        int falseFulls = score.falseFulls() - chosen.falseFulls();
        int missed = score.missedFulls() - chosen.missedFulls();
        if (falseFulls != 0) {
            return signed(falseFulls) + " false";
        }
        if (missed != 0) {
            return signed(missed) + " missed";
        }
        return score.isNoticedInMean(chosen) || score.isNoticedAtWorst(chosen) ? "more error" : "";
    }

    private static String signed(int count) {
        return count > 0 ? "+" + count : "\u2212" + -count;
    }

    private void mark(int x, int y, PictureInk ink, boolean isMissed) {
        if (isMissed) {
            sheet.path(ink, "M%s %sl80 80M%s %sl80 -80".formatted(x - 40, y - 40, x - 40, y + 40));
        } else {
            ring(x, y, ink, 40);
        }
    }

    private void ring(int x, int y, PictureInk ink, int radius) {
        sheet.path(
                ink,
                "M%s %sa%s %s 0 1 0 %s 0a%s %s 0 1 0 %s 0z"
                        .formatted(
                                x - radius,
                                y,
                                radius,
                                radius,
                                2 * radius,
                                radius,
                                radius,
                                -2 * radius));
    }

    private void square(int x, int y) {
        sheet.path(
                new PictureInk(PictureInk.TEXT, 14, ""),
                "M%s %sh90v90h-90z".formatted(x - 45, y - 45));
    }

    private void dot(int x, int y) {
        sheet.filled(
                CHOSEN.colour(),
                CHOSEN,
                "M%s %sa45 45 0 1 0 90 0a45 45 0 1 0 -90 0z".formatted(x - 45, y));
    }

    private void diamond(int x, int y) {
        sheet.filled(
                PictureInk.PAPER,
                new PictureInk(PictureInk.TEXT, 17, ""),
                "M%s %sl75 75l75 -75l-75 -75z".formatted(x - 75, y));
    }
}
