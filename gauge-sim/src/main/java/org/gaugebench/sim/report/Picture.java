package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.jspecify.annotations.Nullable;

/**
 * One still picture of a run as SVG, for papers and slides: a page of an account book with the run
 * drawn on it as a strip chart draws. Truth is broad and light, readings are thin and dark, each
 * with dashes of its own; the error band of the first gauge is the area behind them.
 *
 * <p>All coordinates are whole tenths of a pixel worked out from whole numbers: the same run gives
 * the same bytes on every machine. Nothing in it moves, runs or is fetched from elsewhere.
 */
public final class Picture {
    private static final int MARGIN = PictureSide.MARGIN;
    private static final int TEXT_WIDTH = PictureSide.TEXT_WIDTH;
    private static final int USUAL_SIZE = PictureSide.USUAL_SIZE;
    private static final int ENTRY_SIZE = 135;
    private static final int FOOT_SIZE = PictureSide.FOOT_SIZE;
    private static final int MAIN_HEIGHT = 2_100;
    private static final int TALL_HEIGHT = 1_400;
    private static final int STRIP_HEIGHT = 800;
    private static final int MAIN_LINES = 9;
    private static final int STRIP_LINES = 5;
    private static final int BURST = 40;
    private static final PictureInk MARGIN_RULE = new PictureInk(PictureInk.MARGIN_RULE, 6, "");

    private final RunResult result;
    private final PictureTrace trace;
    private final @Nullable Attribution causes;
    private final String version;
    private final PictureSide side;
    private final PictureSheet sheet;
    private final PictureLedger ledger;
    private final PictureClock clock;

    private Picture(
            RunResult result,
            PictureTrace trace,
            @Nullable Attribution causes,
            String version,
            PictureSide side) {
        this.result = result;
        this.trace = trace;
        this.causes = causes;
        this.version = version;
        this.side = side;
        sheet = side.sheet();
        this.ledger = new PictureLedger(result);
        this.clock =
                new PictureClock(result.simulatedMillis(), PictureSheet.LEFT, PictureSheet.FRAME);
    }

    /**
     * Draws a run.
     *
     * @param result what came of it
     * @param trace what looked on while it ran
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(RunResult result, PictureTrace trace, String version) {
        return of(result, trace, null, version);
    }

    /**
     * Draws a run with its error split by cause.
     *
     * @param result what came of it
     * @param trace what looked on while it ran
     * @param causes the split over time, at least two moments; null where no strip shows it
     * @param version of this program
     * @return a whole SVG document
     */
    public static String of(
            RunResult result, PictureTrace trace, @Nullable Attribution causes, String version) {
        return PictureSide.of(side -> new Picture(result, trace, causes, version, side).draw());
    }

    private int draw() {
        side.open(title(), PictureWords.of(result, trace, ledger, causes));
        int y = legend(side.title(title()) + 10);
        y = strips(y);
        y = marks(y);
        y = PictureGrid.axis(sheet, clock, clock.heading(), y);
        y = entries(y);
        return side.close(foot(y));
    }

    private String title() {
        String which = result.scenario().variant();
        String title = Page.clean(result.scenario().title());
        return which.isEmpty() ? title : title + " [" + Page.clean(which) + "]";
    }

    private int gauges() {
        return Math.min(PictureTrace.MOST_GAUGES, result.lanes().size());
    }

    private boolean hasBand() {
        return trace.strips().stream().anyMatch(it -> it.lower().lowest() != PictureSeries.NONE);
    }

    /** What each line is; the next free height. */
    private int legend(int from) {
        List<String> names = new ArrayList<>();
        names.add("true");
        for (int i = 0; i < gauges(); i++) {
            names.add(Page.clean(result.lanes().get(i).gauge()));
        }
        if (hasBand()) {
            names.add("error band of " + names.get(1));
        }
        int more = result.lanes().size() - gauges();
        if (more > 0) {
            names.add("and " + more + " more gauges, not drawn");
        }
        return side.legend(from, names, this::swatch);
    }

    private void swatch(int index, int x, int y, int width) {
        if (index == 0) {
            sheet.stroke(PictureInk.TRUTH, x, y, x + width, y);
        } else if (index <= gauges()) {
            sheet.stroke(PictureInk.ofGauge(index - 1), x, y, x + width, y);
        } else if (index == gauges() + 1 && hasBand()) {
            sheet.box(x, y - 60, width, 120);
        }
    }

    private int strips(int from) {
        int y = from;
        boolean first = true;
        int top = from;
        for (PictureTrace.Strip strip : trace.strips()) {
            int height =
                    !strip.series().isTall() ? STRIP_HEIGHT : first ? MAIN_HEIGHT : TALL_HEIGHT;
            Attribution split = strip.series() == PictureSeries.CAUSES ? causes : null;
            String of = split == null ? "" : " (" + Page.clean(split.gauge()) + ")";
            sheet.words(PictureSheet.LEFT, y + 170, USUAL_SIZE, strip.series().heading() + of);
            y += 230;
            if (split != null) {
                y = PictureCauses.legend(sheet, y);
            }
            if (first) {
                top = y;
            }
            if (split == null) {
                strip(strip, y, height);
            } else {
                causes(new PictureCauses(split), y, height);
            }
            y += height + 40;
            first = false;
        }
        y -= 40;
        for (int x : new int[] {PictureSheet.LEFT - 45, PictureSheet.LEFT - 20}) {
            sheet.stroke(MARGIN_RULE, x, top, x, y);
        }
        return y;
    }

    private void strip(PictureTrace.Strip strip, int top, int height) {
        List<PictureCurve> all = new ArrayList<>(strip.shown());
        all.add(strip.truth());
        all.add(strip.lower());
        all.add(strip.upper());
        // A current is read from its distance to zero; noise about -5 A is not the whole strip.
        boolean fromZero = strip.series() == PictureSeries.CURRENT;
        long lowest = fromZero ? Math.min(extreme(all, true), 0) : extreme(all, true);
        long highest = fromZero ? Math.max(extreme(all, false), 0) : extreme(all, false);
        int lines = height == STRIP_HEIGHT ? STRIP_LINES : MAIN_LINES;
        PictureScale scale = new PictureScale(lowest, highest, strip.series(), lines, top, height);
        sheet.area(strip.lower(), strip.upper(), clock, scale);
        rules(scale);
        if (!strip.series().isError()) {
            PictureInk pen = strip.series().isTall() ? PictureInk.TRUTH : PictureInk.TRUTH_SLIM;
            sheet.curve(pen, strip.truth(), clock, scale);
        } else {
            int zero = scale.y(0);
            sheet.stroke(
                    PictureInk.TRUTH,
                    PictureSheet.LEFT,
                    zero,
                    PictureSheet.LEFT + PictureSheet.FRAME,
                    zero);
        }
        for (int i = strip.shown().size() - 1; i >= 0; i--) {
            PictureCurve curve = strip.shown().get(i);
            // Gauges that read the same current draw one line in a strip, not five on each other.
            if (strip.series().isTall()
                    || i == 0
                    || curve.differs(strip.shown().get(0), 3 * scale.hundredth())) {
                sheet.curve(PictureInk.ofGauge(i), curve, clock, scale);
            }
        }
    }

    private void causes(PictureCauses stack, int top, int height) {
        PictureScale scale =
                new PictureScale(
                        stack.lowest(),
                        stack.highest(),
                        PictureSeries.CAUSES,
                        MAIN_LINES,
                        top,
                        height);
        rules(scale);
        stack.draw(sheet, clock, scale);
    }

    private static long extreme(List<PictureCurve> curves, boolean smallest) {
        long best = PictureSeries.NONE;
        for (PictureCurve curve : curves) {
            long value = smallest ? curve.lowest() : curve.highest();
            boolean better = smallest ? value < best : value > best;
            if (value != PictureSeries.NONE && (best == PictureSeries.NONE || better)) {
                best = value;
            }
        }
        return best == PictureSeries.NONE ? 0 : best;
    }

    private void rules(PictureScale scale) {
        PictureGrid grid = new PictureGrid(sheet, clock, scale);
        grid.rules();
        moments(scale);
        grid.floor();
    }

    /** A line for each event; of a burst, so many that they still can be told apart. */
    private void moments(PictureScale scale) {
        StringBuilder data = new StringBuilder();
        for (PictureLedger.Line line : ledger.lines()) {
            int last = -BURST;
            for (long moment : line.moments()) {
                int x = clock.x(moment);
                if (x >= last + BURST) {
                    data.append('M').append(x).append(' ').append(scale.top());
                    data.append('v').append(scale.bottom() - scale.top());
                    last = x;
                }
            }
        }
        if (!data.isEmpty()) {
            sheet.path(PictureInk.EVENT, data.toString());
        }
    }

    /** Numbers of the events on the axis, in as many rows as keep them apart. */
    private int marks(int from) {
        List<Integer> ends = new ArrayList<>();
        for (int i = 0; i < ledger.lines().size(); i++) {
            int x = clock.x(ledger.lines().get(i).moments().get(0));
            String number = Integer.toString(i + 1);
            int half = PictureType.width(number, USUAL_SIZE) / 2 + 30;
            int row = 0;
            while (row < ends.size() && ends.get(row) > x - half) {
                row++;
            }
            if (row == ends.size()) {
                ends.add(0);
            }
            ends.set(row, x + half);
            sheet.stroke(PictureInk.FRAMED, x, from, x, from + 60);
            sheet.wordsAround(x, from + 190 + 165 * row, USUAL_SIZE, number);
        }
        return from + (ends.isEmpty() ? 0 : 40 + 165 * ends.size());
    }

    private int entries(int from) {
        int y = from;
        for (int i = 0; i < ledger.lines().size(); i++) {
            sheet.stroke(PictureInk.RULED, MARGIN, y, PictureSheet.WIDTH - MARGIN, y);
            sheet.wordsBefore(MARGIN + 160, y + 170, ENTRY_SIZE, Integer.toString(i + 1));
            y = entry(y, ledger.lines().get(i).words());
        }
        if (ledger.leftOut() > 0) {
            sheet.stroke(PictureInk.RULED, MARGIN, y, PictureSheet.WIDTH - MARGIN, y);
            String more = ledger.lines().isEmpty() ? " events" : " more events";
            y = entry(y, "and " + ledger.leftOut() + more + "; the report lists them");
        }
        return y;
    }

    private int entry(int from, String words) {
        int x = MARGIN + 240;
        return sheet.paragraph(x, from + 170, ENTRY_SIZE, TEXT_WIDTH - 240, words) - 115;
    }

    private int foot(int from) {
        sheet.stroke(PictureInk.FRAMED, MARGIN, from + 20, PictureSheet.WIDTH - MARGIN, from + 20);
        String file = result.scenario().file().replace('\\', '/');
        String run =
                "simulated; %s, seed %s"
                        .formatted(file.substring(file.lastIndexOf('/') + 1), result.seed());
        // In a line of its own: how long the version is moves nothing else.
        String origin =
                "digest %s, scenario %s, gauge-sim %s"
                        .formatted(
                                RunJson.hex(result.digest()),
                                ScenarioWriter.digest(result.scenario()),
                                version);
        int y = sheet.paragraph(MARGIN, from + 190, FOOT_SIZE, TEXT_WIDTH, run);
        return sheet.paragraph(MARGIN, y, FOOT_SIZE, TEXT_WIDTH, origin) - 60;
    }
}
