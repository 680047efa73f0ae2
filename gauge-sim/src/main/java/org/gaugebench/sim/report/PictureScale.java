package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;

/**
 * An upright axis in whole numbers: its ends are ruled lines at multiples of 1, 2 or 5 times a
 * power of ten.
 */
final class PictureScale {
    private static final int[] STEPS = {1, 2, 5};

    private final long low;
    private final long high;
    private final long step;
    private final int shift;
    private final int top;
    private final int height;

    /**
     * Fits an axis.
     *
     * @param lowest value to show
     * @param highest value to show, not below it
     * @param series whose axis it is
     * @param mostLines ruled lines at most, the ends included; at least 3
     * @param top of the frame
     * @param height of the frame
     */
    PictureScale(
            long lowest, long highest, PictureSeries series, int mostLines, int top, int height) {
        this(lowest, highest, series.shift(), series.smallestStep(), mostLines, top, height);
    }

    /** The same for figures that are no series of a run: their places and their smallest step. */
    PictureScale(
            long lowest,
            long highest,
            int shift,
            long smallestStep,
            int mostLines,
            int top,
            int height) {
        this.shift = shift;
        this.top = top;
        this.height = height;
        long tried = smallestStep;
        for (int i = 1; lines(lowest, highest, tried) > mostLines; i++) {
            long decade = tried / STEPS[(i - 1) % STEPS.length];
            tried = decade * (i % STEPS.length == 0 ? 10 : STEPS[i % STEPS.length]);
        }
        step = tried;
        low = Math.floorDiv(lowest, step) * step;
        high = Math.max(-Math.floorDiv(-highest, step) * step, low + step);
    }

    private static long lines(long lowest, long highest, long step) {
        return -Math.floorDiv(-highest, step) - Math.floorDiv(lowest, step) + 1;
    }

    /** Where a value stands, in the picture's units from above. */
    int y(long value) {
        return (int) (top + Math.floorDiv((high - value) * height + (high - low) / 2, high - low));
    }

    /** Values of the ruled lines, from below. */
    List<Long> lines() {
        List<Long> lines = new ArrayList<>();
        for (long value = low; value <= high; value += step) {
            lines.add(value);
        }
        return lines;
    }

    /** A ruled line's value in the unit shown, with as many places as the step needs. */
    String label(long value) {
        int places = shift;
        for (long rest = step; places > 0 && rest % 10 == 0; rest /= 10) {
            places--;
        }
        long divisor = 1;
        for (int i = places; i < shift; i++) {
            divisor *= 10;
        }
        return Decimals.plain(value / divisor, places).replace("-", "\u2212");
    }

    int top() {
        return top;
    }

    int bottom() {
        return top + height;
    }

    /** Distance of values that stand a hundredth of the height apart. */
    long hundredth() {
        return Math.max(1, (high - low) / 100);
    }
}
