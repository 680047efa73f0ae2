package org.gaugebench.sim.report;

import java.util.Set;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeFamily;

/**
 * One gauge as a report looks at it: in every tick at what may jump in any of them, and at the rest
 * when it is asked to.
 */
final class ReportLane {
    static final int STATE = 0;
    static final int LOWER = 1;
    static final int UPPER = 2;
    static final int CURRENT = 3;
    static final int VOLTAGE = 4;
    static final int TEMPERATURE = 5;
    static final int HOURS = 6;

    /** Figures of a gauge. */
    static final int FIGURES = 7;

    private static final int FULL_PARTS_PER_MILLION = 1_000_000;

    private final Lane lane;
    private final boolean hasRule;
    private final boolean jumps;
    private final boolean hoursJump;
    private final boolean anyJump;
    private final ReportStates rule;
    private final int[][] rings;
    private final int[] currents;
    private final int[] voltages;
    private long stepNanocoulombs;
    private int stateBefore;
    private int lowerBefore;
    private int upperBefore;
    private final boolean runsOn;

    /**
     * Looks at nothing yet.
     *
     * @param ringTicks length of the rings of the figures that are looked at in every tick
     * @param bucketTicks ticks of a bucket, at least 1
     */
    ReportLane(Lane lane, int ringTicks, long bucketTicks) {
        this.lane = lane;
        hasRule = lane.spec().kind() == GaugeSpec.Kind.CORE;
        Set<Mistake> mistakes = lane.spec().mistakes();
        jumps = mistakes.stream().anyMatch(Mistake::jumpsUntold);
        hoursJump = mistakes.stream().anyMatch(it -> it.family() == MistakeFamily.HOURS);
        runsOn = mistakes.contains(Mistake.NO_CLAMP);
        anyJump = jumps || hoursJump;
        rule = new ReportStates(bucketTicks);
        rings = new int[FIGURES][];
        for (int i = 0; i < FIGURES; i++) {
            rings[i] = isOfEveryTick(i) ? new int[ringTicks] : new int[0];
        }
        currents = rings[CURRENT];
        voltages = rings[VOLTAGE];
    }

    private boolean isOfEveryTick(int figure) {
        return figure == CURRENT
                || figure == VOLTAGE
                || (jumps && figure == STATE)
                || (hoursJump && figure == HOURS);
    }

    /** Whether it has a rule whose states are drawn. */
    boolean hasRule() {
        return hasRule;
    }

    /** The states of the rule; none of a gauge without one. */
    ReportStates rule() {
        return rule;
    }

    /**
     * The values of the last ticks, by tick modulo the ring's length; without any length for a
     * figure that is not looked at in every tick.
     */
    int[] ring(int figure) {
        return rings[figure];
    }

    /**
     * Takes an event of a gauge, which may be another one; those of a program, which may tell of a
     * tick long past, say nothing here.
     */
    void event(Lane announcing, Event event, long value) {
        if (announcing == lane && lane.program() == null && RecordedEvent.isStep(event)) {
            stepNanocoulombs += value;
        }
    }

    /**
     * Fills a row of the tick before the last look, if events have told steps since: the state of
     * charge less those steps, and the band of the look before, a minute ago at most.
     */
    void fillBefore(ReportWindows windows, int[] row, int firstColumn) {
        if (!jumps && stateBefore != row[firstColumn + STATE]) {
            windows.set(firstColumn + STATE, stateBefore);
            windows.set(firstColumn + LOWER, lowerBefore);
            windows.set(firstColumn + UPPER, upperBefore);
        }
    }

    /** Puts the figures of every tick into their rings. */
    void tick(int at) {
        if (!lane.hasPower()) {
            for (int[] ring : rings) {
                if (ring.length > 0) {
                    ring[at] = ReportChannel.GAP;
                }
            }
            return;
        }
        Readout readout = lane.readSample();
        currents[at] = readout.currentMicroamps;
        voltages[at] = readout.voltageMicrovolts;
        if (anyJump) {
            jump(at, readout);
        }
    }

    private void jump(int at, Readout readout) {
        if (jumps) {
            rings[STATE][at] = state(readout);
        }
        if (hoursJump) {
            rings[HOURS][at] = hours(readout);
        }
    }

    /**
     * Fills what is not of every tick into a row, from the gauge's first column on, and takes the
     * rule's state.
     */
    void look(long tick, int[] row, int firstColumn) {
        Readout readout = lane.read();
        boolean on = lane.hasPower();
        boolean band =
                on
                        && readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN
                        && !readout.bandUnknown;
        boolean warm = on && readout.temperatureMillicelsius != Sample.TEMPERATURE_ABSENT;
        lowerBefore = row[firstColumn + LOWER];
        upperBefore = row[firstColumn + UPPER];
        row[firstColumn + LOWER] = band ? readout.lowerEdgePartsPerMillion : ReportChannel.GAP;
        row[firstColumn + UPPER] = band ? readout.upperEdgePartsPerMillion : ReportChannel.GAP;
        row[firstColumn + TEMPERATURE] = warm ? readout.temperatureMillicelsius : ReportChannel.GAP;
        if (!jumps) {
            row[firstColumn + STATE] = on ? state(readout) : ReportChannel.GAP;
            stateBefore = before(row[firstColumn + STATE], readout.fullChargeNanocoulombs);
            stepNanocoulombs = 0;
        }
        if (!hoursJump) {
            row[firstColumn + HOURS] = on ? hours(readout) : ReportChannel.GAP;
        }
        if (hasRule) {
            rule.add(tick, on ? readout.ruleState : null, readout.ruleReason);
        }
    }

    /** Of a count that runs on behind the figure, the figure. */
    private int before(int state, long capacityNanocoulombs) {
        if (stepNanocoulombs == 0 || state == ReportChannel.GAP) {
            return state;
        }
        double before = state - 1e6 * stepNanocoulombs / capacityNanocoulombs;
        double shown = runsOn ? before : Math.max(0, Math.min(before, FULL_PARTS_PER_MILLION));
        return (int) StrictMath.round(shown);
    }

    private static int state(Readout readout) {
        return readout.stateOfChargePartsPerMillion == Readout.NOT_KNOWN
                ? ReportChannel.GAP
                : readout.stateOfChargePartsPerMillion;
    }

    private static int hours(Readout readout) {
        boolean known =
                readout.timeToEmptyState == EstimateState.ESTIMATE
                        || readout.timeToEmptyState == EstimateState.MORE_THAN;
        return known ? readout.timeToEmptyMinutes : ReportChannel.GAP;
    }
}
