package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Expectation;
import org.gaugebench.sim.scenario.GaugeSpec;

/**
 * Looks at a run and keeps what the page of it draws.
 *
 * <p>Current and voltage, true and read, are looked at in every tick. What a core works out from
 * them (charge, band, hours, rule) is looked at in every whole minute, after each event and change,
 * and in every tick near those: reading it costs three times what a tick does, and between two
 * looks its count moves by what flows and by nothing else. The other kinds of gauge, whose figures
 * may jump as they like, are looked at in every tick.
 */
public final class ReportTrace implements Observer {
    /** Most gauges drawn: beyond that, lines are no longer told apart. */
    static final int MOST_GAUGES = PictureTrace.MOST_GAUGES;

    /** Buckets of a channel, where few channels share the page. */
    static final int MOST_BUCKETS = 2_400;

    /** Channels times buckets: what keeps a page with six gauges as small as one with one. */
    private static final int BUCKETS_OF_ALL = 50_000;

    private static final int RING = 1_024;
    private static final int MOST_IN_A_ROW = 512;

    /** Charge true, current true, voltage true, temperature true: these columns come first. */
    static final int TRUE_STATE = 0;

    static final int TRUE_CURRENT = 1;
    static final int TRUE_VOLTAGE = 2;
    static final int TRUE_TEMPERATURE = 3;
    static final int TRUE_COLUMNS = 4;

    /** Then for each gauge these. */
    static final int STATE = 0;

    static final int LOWER = 1;
    static final int UPPER = 2;
    static final int CURRENT = 3;
    static final int VOLTAGE = 4;
    static final int TEMPERATURE = 5;
    static final int HOURS = 6;
    static final int GAUGE_COLUMNS = 7;

    private Lane[] lanes = {};
    private ReportChannel[] channels = {};
    private ReportWindows windows = new ReportWindows(1);
    private final List<ReportStates> rules = new ArrayList<>();
    private final ReportStarved starved = new ReportStarved();
    private int[][] rings = {};
    private int[] trueCurrents = {};
    private int[] trueVoltages = {};
    private int[] row = {};
    private int[] looked = {};
    private long bucketTicks = 1;
    private long rowFrom = 1;
    private long rowEnd;
    private boolean rowHasGap;
    private boolean looksAtEveryTick;
    private boolean isDue;
    private boolean isMomentDue;
    private long[] knownMoments = {};

    /** Starts without a run. */
    public ReportTrace() {}

    /** The column of a gauge's figure. */
    static int column(int gauge, int figure) {
        return TRUE_COLUMNS + gauge * GAUGE_COLUMNS + figure;
    }

    @Override
    public boolean wantsTicks() {
        return true;
    }

    @Override
    public void onStart(Rig rig) {
        int gauges = Math.min(MOST_GAUGES, rig.lanes().size());
        lanes = rig.lanes().subList(0, gauges).toArray(new Lane[0]);
        int columns = TRUE_COLUMNS + gauges * GAUGE_COLUMNS;
        long ticks = rig.scenario().durationMillis() / rig.scenario().tickMillis();
        long buckets = Math.min(MOST_BUCKETS, BUCKETS_OF_ALL / columns);
        bucketTicks = Math.max(1, (ticks + buckets - 1) / buckets);
        channels = new ReportChannel[columns];
        rings = new int[columns][];
        for (int i = 0; i < columns; i++) {
            channels[i] = new ReportChannel(bucketTicks);
            rings[i] = isOfEveryTick(i) ? new int[RING] : new int[0];
        }
        row = new int[columns];
        looked = IntStream.range(0, columns).filter(i -> !isOfEveryTick(i)).toArray();
        windows = new ReportWindows(columns);
        trueCurrents = rings[TRUE_CURRENT];
        trueVoltages = rings[TRUE_VOLTAGE];
        for (Lane lane : lanes) {
            rules.add(new ReportStates(bucketTicks));
            looksAtEveryTick |= lane.spec().kind() != GaugeSpec.Kind.CORE;
        }
        knownMoments =
                rig.scenario().expectations().stream()
                        .filter(it -> it.kind() == Expectation.Kind.AT)
                        .mapToLong(Expectation::fromMillis)
                        .toArray();
        rowEnd = Math.min(bucketTicks, MOST_IN_A_ROW);
        look(rig);
        // Nothing has flowed before the first tick: a line that began at zero would be a spike.
        windows.open(0, false);
        windows.row(0);
        for (int i = 0; i < columns; i++) {
            if (!isOfEveryTick(i)) {
                channels[i].add(0, row[i]);
                windows.set(i, row[i]);
            }
        }
        isDue = false;
        isMomentDue = false;
    }

    static boolean isOfEveryTick(int column) {
        int figure = column < TRUE_COLUMNS ? -1 : (column - TRUE_COLUMNS) % GAUGE_COLUMNS;
        return column == TRUE_CURRENT
                || column == TRUE_VOLTAGE
                || figure == CURRENT
                || figure == VOLTAGE;
    }

    @Override
    public void onTick(Rig rig) {
        long tick = rig.ticks();
        int at = (int) tick & (RING - 1);
        Truth truth = rig.truth();
        trueCurrents[at] = micro(truth.meanCurrentAmps());
        trueVoltages[at] = micro(truth.voltageVolts());
        for (int i = 0; i < lanes.length; i++) {
            Lane lane = lanes[i];
            int current = ReportChannel.GAP;
            int voltage = ReportChannel.GAP;
            if (lane.hasPower()) {
                Readout readout = lane.readSample();
                current = readout.currentMicroamps;
                voltage = readout.voltageMicrovolts;
            } else {
                rowHasGap = true;
            }
            rings[column(i, CURRENT)][at] = current;
            rings[column(i, VOLTAGE)][at] = voltage;
        }
        starved.add(rig.outlook().isStarved(), rig.timeMillis());
        if (isDue || looksAtEveryTick || windows.isOpen(tick)) {
            lookAndKeep(rig, tick);
        }
        if (tick == rowEnd) {
            endRow(tick);
        }
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
        long from = windows.open(tick, isFailure);
        for (long past = Math.max(1, from); from >= 0 && past < tick; past++) {
            windowRow(past, false);
        }
    }

    private void windowRow(long tick, boolean isNow) {
        windows.row(tick);
        for (int i = 0; i < row.length; i++) {
            if (isOfEveryTick(i)) {
                windows.set(i, rings[i][(int) tick & (RING - 1)]);
            } else if (isNow) {
                windows.set(i, row[i]);
            }
        }
    }

    private void endRow(long tick) {
        int count = (int) (tick - rowFrom + 1);
        for (int i = 0; i < rings.length && count > 0; i++) {
            if (!isOfEveryTick(i)) {
                continue;
            }
            if (rowHasGap) {
                for (long each = rowFrom; each <= tick; each++) {
                    channels[i].add(each, rings[i][(int) each & (RING - 1)]);
                }
            } else {
                channels[i].addRow(rowFrom, rings[i], count);
            }
        }
        rowHasGap = false;
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
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        isDue = true;
        isMomentDue = true;
    }

    /** Fills the row with what a core works out, and the truth of it. */
    private void look(Rig rig) {
        Truth truth = rig.truth();
        row[TRUE_STATE] = (int) StrictMath.round(truth.stateOfCharge() * 1e6);
        row[TRUE_TEMPERATURE] = (int) StrictMath.round(truth.temperatureCelsius() * 1e3);
        for (int i = 0; i < lanes.length; i++) {
            Lane lane = lanes[i];
            Readout readout = lane.read();
            boolean on = lane.hasPower();
            boolean known = on && readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
            boolean band = on && known && !readout.bandUnknown;
            boolean warm = on && readout.temperatureMillicelsius != Sample.TEMPERATURE_ABSENT;
            boolean hours =
                    on
                            && (readout.timeToEmptyState == EstimateState.ESTIMATE
                                    || readout.timeToEmptyState == EstimateState.MORE_THAN);
            int column = column(i, 0);
            set(column + STATE, known, readout.stateOfChargePartsPerMillion);
            set(column + LOWER, band, readout.lowerEdgePartsPerMillion);
            set(column + UPPER, band, readout.upperEdgePartsPerMillion);
            set(column + TEMPERATURE, warm, readout.temperatureMillicelsius);
            set(column + HOURS, hours, readout.timeToEmptyMinutes);
            rules.get(i).add(rig.ticks(), on ? readout.ruleState : null, readout.ruleReason);
        }
    }

    private void set(int column, boolean isKnown, int value) {
        row[column] = isKnown ? value : ReportChannel.GAP;
    }

    /** Whole millionths, cut and not rounded: it is done in every tick. */
    private static int micro(double value) {
        return (int) (value * 1e6);
    }

    /** Ends the run. */
    void close(long ticks) {
        endRow(ticks);
        for (ReportChannel channel : channels) {
            channel.close();
        }
    }

    int gauges() {
        return lanes.length;
    }

    boolean hasRule(int gauge) {
        return lanes[gauge].spec().kind() == GaugeSpec.Kind.CORE;
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
        return rules.get(gauge);
    }

    ReportStarved starved() {
        return starved;
    }
}
