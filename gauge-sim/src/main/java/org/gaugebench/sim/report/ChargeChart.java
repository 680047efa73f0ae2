package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.Track;

/**
 * True and shown state of charge over time, in plain characters.
 *
 * <p>Every column draws the whole range from the smallest to the largest value of its span, so that
 * a spike of a single minute is seen however long the run. Each gauge has a letter of its own, so
 * that the chart reads without colour. Truth and the first gauge stand in front of the others.
 */
final class ChargeChart {
    private static final int COLUMNS = 70;
    private static final int MOST_ROWS = 14;
    private static final int[] STEPS = {1, 2, 5};
    private static final int LABEL_WIDTH = 5;
    private static final char TRUTH = '.';
    private static final char FIRST_ON_TRUTH = '@';
    private static final String GAUGES = "oxvzk";

    private final RunResult result;
    private final char[][] cells;
    private final int stepPercent;
    private final int topPercent;

    private ChargeChart(RunResult result) {
        this.result = result;
        double lowest = lowest(result.truePercent());
        double highest = highest(result.truePercent());
        for (LaneResult lane : drawn(result)) {
            lowest = Math.min(lowest, lowest(lane.shownPercent()));
            highest = Math.max(highest, highest(lane.shownPercent()));
        }
        int step = STEPS[0];
        int decade = 1;
        for (int i = 1; rows(lowest, highest, step) > MOST_ROWS; i++) {
            decade *= i % STEPS.length == 0 ? 10 : 1;
            step = STEPS[i % STEPS.length] * decade;
        }
        stepPercent = step;
        topPercent = row(highest, step) * step;
        cells = new char[rows(lowest, highest, step)][COLUMNS];
    }

    /** Gauges beyond the letters are left out; their figures stand in the table. */
    private static List<LaneResult> drawn(RunResult result) {
        return result.lanes().subList(0, Math.min(GAUGES.length(), result.lanes().size()));
    }

    private static int row(double percent, int step) {
        return (int) Math.round(percent / step);
    }

    private static int rows(double lowest, double highest, int step) {
        return row(highest, step) - row(lowest, step) + 1;
    }

    private static double lowest(Track track) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < track.size(); i++) {
            lowest = Double.isNaN(track.lowest(i)) ? lowest : Math.min(lowest, track.lowest(i));
        }
        return lowest;
    }

    private static double highest(Track track) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < track.size(); i++) {
            highest =
                    Double.isNaN(track.highest(i)) ? highest : Math.max(highest, track.highest(i));
        }
        return highest;
    }

    /** Adds the chart to a page. */
    static void draw(RunResult result, Page page) {
        ChargeChart chart = new ChargeChart(result);
        List<LaneResult> lanes = drawn(result);
        for (int i = lanes.size() - 1; i > 0; i--) {
            chart.drawTrack(lanes.get(i).shownPercent(), GAUGES.charAt(i));
        }
        chart.drawTrack(result.truePercent(), TRUTH);
        chart.drawTrack(lanes.get(0).shownPercent(), GAUGES.charAt(0));
        chart.print(page);
    }

    private void drawTrack(Track track, char mark) {
        for (int column = 0; column < COLUMNS; column++) {
            int from = (int) ((long) column * track.size() / COLUMNS);
            int to = Math.max(from + 1, (int) ((column + 1L) * track.size() / COLUMNS));
            for (int bucket = from; bucket < Math.min(to, track.size()); bucket++) {
                drawSpan(column, track.lowest(bucket), track.highest(bucket), mark);
            }
        }
    }

    private void drawSpan(int column, double low, double high, char mark) {
        if (Double.isNaN(low)) {
            return;
        }
        int top = topPercent / stepPercent;
        for (int r = top - row(high, stepPercent); r <= top - row(low, stepPercent); r++) {
            char before = cells[r][column];
            boolean meetsTruth = before == TRUTH || before == FIRST_ON_TRUTH;
            boolean isFirst = mark == GAUGES.charAt(0);
            cells[r][column] = isFirst && meetsTruth ? FIRST_ON_TRUTH : mark;
        }
    }

    private void print(Page page) {
        for (int r = 0; r < cells.length; r++) {
            String line = new String(cells[r]).replace('\0', ' ').stripTrailing();
            String level = Integer.toString(topPercent - r * stepPercent);
            page.line(" ".repeat(Math.max(0, LABEL_WIDTH - level.length())) + level + "% |" + line);
        }
        page.line("       +" + "-".repeat(COLUMNS));
        String end = Figures.duration(result.simulatedMillis());
        page.line("        0" + " ".repeat(Math.max(1, COLUMNS - 1 - end.length())) + end);
        List<String> legend = new ArrayList<>();
        List<LaneResult> lanes = drawn(result);
        legend.add(TRUTH + " true");
        for (int i = 0; i < lanes.size(); i++) {
            legend.add(GAUGES.charAt(i) + " " + Page.clean(lanes.get(i).gauge()));
        }
        legend.add(FIRST_ON_TRUTH + " both true and " + Page.clean(lanes.get(0).gauge()));
        page.paragraph(8, String.join(", ", legend));
    }
}
