package org.gaugebench.sim.live;

import java.util.Locale;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.live.lessons.FigureUnit;
import org.gaugebench.sim.live.lessons.Sketch;
import org.gaugebench.sim.plant.Truth;

/**
 * What the upper strip of the chart shows: how full, or what a lesson asks about. Its upright axis
 * is that of the pupils' sheet, so that a line drawn on paper can be held against the page.
 *
 * @param unit {@link FigureUnit#PERCENT}, POINTS, AMP_HOURS, AMPS, VOLTS or MINUTES
 * @param lowest foot of the axis in percent, points, Ah, A, V or hours
 * @param highest its top
 */
record Strip(FigureUnit unit, double lowest, double highest) {
    /** How full, from empty to full. */
    static final Strip HOW_FULL = new Strip(FigureUnit.PERCENT, 0, 100);

    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /** The strip of a lesson's axes. */
    static Strip of(Sketch sketch) {
        double step =
                switch (sketch.unit()) {
                    case PERCENT, POINTS -> 1e4;
                    case AMP_HOURS, AMPS, VOLTS -> 1e6;
                    case MINUTES -> 60;
                    case CELSIUS, TIMES ->
                            throw new IllegalArgumentException("no strip is in " + sketch.unit());
                };
        return new Strip(sketch.unit(), sketch.lowest() / step, sketch.highest() / step);
    }

    /** Whether it shows what the chart keeps for every run. */
    boolean isHowFull() {
        return unit == FigureUnit.PERCENT;
    }

    /** Whether a gauge's line tells the truth to whoever knows what the gauge shows. */
    boolean isSecret() {
        return unit == FigureUnit.POINTS;
    }

    /** The unit's name as the page's words have it. */
    String word() {
        return unit.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * What a gauge with power shows.
     *
     * @param it its readout
     * @param truth of the same moment
     * @return NaN where it does not know
     */
    double shown(Readout it, Truth truth) {
        boolean known = it.trust != Trust.UNKNOWN;
        double percent = known ? it.stateOfChargePartsPerMillion / 1e4 : Double.NaN;
        return switch (unit) {
            case PERCENT -> percent;
            case POINTS -> percent - truth.stateOfCharge() * 100;
            case AMP_HOURS ->
                    known ? it.remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR : Double.NaN;
            case AMPS -> it.currentMicroamps / 1e6;
            case VOLTS -> it.voltageMicrovolts / 1e6;
            case MINUTES -> tells(it) ? it.timeToEmptyMinutes / 60.0 : Double.NaN;
            case CELSIUS, TIMES -> Double.NaN;
        };
    }

    private static boolean tells(Readout it) {
        return it.timeToEmptyState == EstimateState.ESTIMATE
                || it.timeToEmptyState == EstimateState.MORE_THAN;
    }

    /** What is true; NaN for the hours left, which nobody knows before the battery is empty. */
    double actual(Truth truth) {
        return switch (unit) {
            case PERCENT -> truth.stateOfCharge() * 100;
            case POINTS -> 0;
            case AMP_HOURS -> truth.chargeAmpHours();
            case AMPS -> truth.meanCurrentAmps();
            case VOLTS -> truth.batteryVolts();
            case MINUTES, CELSIUS, TIMES -> Double.NaN;
        };
    }
}
