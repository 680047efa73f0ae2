package org.gaugebench.sim.report;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Expectation;

/**
 * Looks at a run and keeps what the page of it draws.
 *
 * <p>Current and voltage, true and read, are looked at in every tick. What a core works out from
 * them (charge, band, hours, rule) is looked at in every whole minute, after each event and change,
 * and in every tick near those: reading it costs three times what a tick does, and between two
 * looks its count moves by what flows and by nothing else. So does that of the other kinds of
 * gauge, but for exhibits with a mistake that makes a figure jump untold: that figure, and no
 * other, is looked at in every tick.
 */
public final class ReportTrace implements Observer {
    /** Most gauges drawn: beyond that, lines are no longer told apart. */
    static final int MOST_GAUGES = PictureTrace.MOST_GAUGES;

    /** Buckets of a channel, where few channels share the page. */
    static final int MOST_BUCKETS = 2_400;

    /** Channels times buckets: what keeps a page with six gauges as small as one with one. */
    private static final int BUCKETS_OF_ALL = 50_000;

    /** Columns times ticks near moments that a page keeps. */
    private static final int WINDOW_CELLS = 260_000;

    private static final int RING = 1_024;
    private static final int MOST_IN_A_ROW = 512;

    /** Charge true, current true, voltage true, temperature true: these columns come first. */
    static final int TRUE_STATE = 0;

    static final int TRUE_CURRENT = 1;
    static final int TRUE_VOLTAGE = 2;
    static final int TRUE_TEMPERATURE = 3;
    static final int TRUE_COLUMNS = 4;

    private ReportLane[] lanes = {};
    private ReportChannel[] channels = {};
    private ReportWindows windows = new ReportWindows(1, 0);
    private ReportStarved starved = new ReportStarved(1);
    private final int[] trueCurrents = new int[RING];
    private final int[] trueVoltages = new int[RING];
    private int[][] rings = {};
    private int[] ringed = {};
    private int[] row = {};
    private int[] looked = {};
    private long bucketTicks = 1;
    private long rowFrom = 1;
    private long rowEnd;

    /** First tick that needs more than to fill the rings. */
    private long busyFrom;

    private boolean isDue;
    private boolean isMomentDue;
    private long[] knownMoments = {};

    /** Starts without a run. */
    public ReportTrace() {}

    /** The column of a gauge's figure. */
    static int column(int gauge, int figure) {
        return TRUE_COLUMNS + gauge * ReportLane.FIGURES + figure;
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onStart(Rig rig) {
        int gauges = Math.min(MOST_GAUGES, rig.lanes().size());
        int columns = column(gauges, 0);
        long ticks = rig.scenario().durationMillis() / rig.scenario().tickMillis();
        long buckets = Math.min(MOST_BUCKETS, BUCKETS_OF_ALL / columns);
        bucketTicks = Math.max(1, (ticks + buckets - 1) / buckets);
        lanes = new ReportLane[gauges];
        rings = new int[columns][0];
        rings[TRUE_CURRENT] = trueCurrents;
        rings[TRUE_VOLTAGE] = trueVoltages;
        for (int i = 0; i < gauges; i++) {
            lanes[i] = new ReportLane(rig.lanes().get(i), RING, bucketTicks);
            for (int figure = 0; figure < ReportLane.FIGURES; figure++) {
                rings[column(i, figure)] = lanes[i].ring(figure);
            }
        }
        ringed = columnsWhere(i -> rings[i].length > 0);
        looked = columnsWhere(i -> rings[i].length == 0);
        channels = new ReportChannel[columns];
        Arrays.setAll(channels, i -> new ReportChannel(bucketTicks));
        row = new int[columns];
        windows = new ReportWindows(columns, WINDOW_CELLS / columns);
        knownMoments =
                rig.scenario().expectations().stream()
                        .filter(it -> it.kind() == Expectation.Kind.AT)
                        .mapToLong(Expectation::fromMillis)
                        .toArray();
        rowEnd = Math.min(bucketTicks, MOST_IN_A_ROW);
        starved = new ReportStarved((int) rig.scenario().tickMillis());
        start(rig);
    }

    private int[] columnsWhere(IntPredicate wanted) {
        return IntStream.range(0, rings.length).filter(wanted).toArray();
    }

    /** Nothing has flowed before the first tick: a line that began at zero would be a spike. */
    private void start(Rig rig) {
        look(rig);
        windows.open(0, false);
        windows.row(0);
        for (ReportLane lane : lanes) {
            lane.tick(0);
        }
        for (int column = 0; column < rings.length; column++) {
            if (!isFlow(column)) {
                int value = rings[column].length > 0 ? rings[column][0] : row[column];
                channels[column].add(0, value);
                windows.set(column, value);
            }
        }
        isDue = false;
        isMomentDue = false;
    }

    /** Whether a column is a current or a voltage, which only a tick brings. */
    private static boolean isFlow(int column) {
        int figure = column < TRUE_COLUMNS ? -1 : (column - TRUE_COLUMNS) % ReportLane.FIGURES;
        return column == TRUE_CURRENT
                || column == TRUE_VOLTAGE
                || figure == ReportLane.CURRENT
                || figure == ReportLane.VOLTAGE;
    }

    @Override
    public void onTick(Rig rig) {
        long tick = rig.ticks();
        int at = (int) tick & (RING - 1);
        // The plant itself: after a tick no gauge tells of a past one, and to ask costs as much.
        Circuit plant = rig.plant();
        trueCurrents[at] = micro(plant.meanCurrentAmps());
        trueVoltages[at] = micro(plant.voltageVolts());
        for (ReportLane lane : lanes) {
            lane.tick(at);
        }
        starved.add(plant.isStarved(), tick);
        if (tick >= busyFrom) {
            doMore(rig, tick);
        }
    }

    /**
     * What few ticks need. It stands behind one comparison: each condition of its own in {@link
     * #onTick} had that compiled anew when it first held, at more cost than all looks of a year.
     */
    private void doMore(Rig rig, long tick) {
        if (isDue || windows.isOpen(tick)) {
            lookAndKeep(rig, tick);
        }
        if (tick == rowEnd) {
            endRow(tick);
        }
        busyFrom = windows.isOpen(tick + 1) ? tick + 1 : rowEnd;
    }

    private void lookAndKeep(Rig rig, long tick) {
        look(rig);
        keep(tick);
        if (isMomentDue) {
            openWindow(tick, false);
        }
        if (windows.isOpen(tick) && !windows.hasRow(tick)) {
            windowRow(tick, true);
        }
        isDue = false;
        isMomentDue = false;
    }

    private void keep(long tick) {
        for (int column : looked) {
            channels[column].add(tick, row[column]);
        }
    }

    /** What led to this moment is still in the ring. */
    private void openWindow(long tick, boolean isFailure) {
        busyFrom = 0;
        long from = windows.open(tick, isFailure);
        long first = Math.max(1, from);
        for (long past = first; from >= 0 && past < tick; past++) {
            windowRow(past, false);
        }
        if (from >= 0 && first < tick) {
            setBefore();
        }
    }

    /** A count that was set did not climb there: the tick before gets what it was. */
    private void setBefore() {
        for (int i = 0; i < lanes.length; i++) {
            lanes[i].fillBefore(windows, row, column(i, 0));
        }
    }

    private void windowRow(long tick, boolean isNow) {
        windows.row(tick);
        for (int column : ringed) {
            windows.set(column, rings[column][(int) tick & (RING - 1)]);
        }
        for (int i = 0; isNow && i < looked.length; i++) {
            windows.set(looked[i], row[looked[i]]);
        }
    }

    private void endRow(long tick) {
        int count = (int) (tick - rowFrom + 1);
        for (int i = 0; i < ringed.length && count > 0; i++) {
            channels[ringed[i]].addRow(rowFrom, rings[ringed[i]], count);
        }
        rowFrom = tick + 1;
        rowEnd = Math.min(ReportChannel.endOfBucket(rowFrom, bucketTicks), tick + MOST_IN_A_ROW);
    }

    @Override
    public void onMoment(Rig rig) {
        for (long known : knownMoments) {
            // The first tick at or after it; a window in which an expectation has to hold has none.
            long late = rig.timeMillis() - known;
            isMomentDue |= late >= 0 && late < rig.scenario().tickMillis();
        }
        lookAndKeep(rig, rig.ticks());
    }

    @Override
    public void onFailure(Rig rig) {
        openWindow(rig.ticks(), true);
        lookAndKeep(rig, rig.ticks());
    }

    @Override
    public void onChange(Rig rig, Change change) {
        isDue = true;
        busyFrom = 0;
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        for (ReportLane each : lanes) {
            each.event(lane, event, value);
        }
        isDue = true;
        isMomentDue = true;
        busyFrom = 0;
    }

    /** Fills the row with what a core works out, and the truth of it. */
    private void look(Rig rig) {
        Truth truth = rig.truth();
        row[TRUE_STATE] = (int) StrictMath.round(truth.stateOfCharge() * 1e6);
        row[TRUE_TEMPERATURE] = (int) StrictMath.round(truth.temperatureCelsius() * 1e3);
        for (int i = 0; i < lanes.length; i++) {
            lanes[i].look(rig.ticks(), row, column(i, 0));
        }
    }

    /** Whole millionths, cut and not rounded: it is done in every tick. */
    private static int micro(double value) {
        return (int) (value * 1e6);
    }

    /** Ends the run. */
    void close(long ticks) {
        endRow(ticks);
        starved.close(ticks);
        for (ReportChannel channel : channels) {
            channel.close();
        }
    }

    /** Ticks of which a line keeps the lowest and the highest value, away from windows. */
    long bucketTicks() {
        return bucketTicks;
    }

    int gauges() {
        return lanes.length;
    }

    boolean hasRule(int gauge) {
        return lanes[gauge].hasRule();
    }

    ReportChannel channel(int column) {
        return channels[column];
    }

    int columns() {
        return channels.length;
    }

    ReportWindows windows() {
        return windows;
    }

    ReportStates rule(int gauge) {
        return lanes[gauge].rule();
    }

    ReportStarved starved() {
        return starved;
    }
}
