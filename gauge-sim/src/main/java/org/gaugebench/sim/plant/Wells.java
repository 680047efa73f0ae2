package org.gaugebench.sim.plant;

import java.util.Objects;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.KineticWells;
import org.jspecify.annotations.Nullable;

/**
 * Available and bound charge of a battery, and the voltage that goes with them.
 *
 * <p>The battery's true charge counts from the wells' sum at which a 20 h discharge ends: what a
 * slower one could still draw lies below zero. The open-circuit voltage follows the <em>available
 * well's height</em> instead of the true charge: it sags under a load that has been on for long,
 * recovers for hours after it, and stands too high for hours after a charge. At rest for long it is
 * the published table's.
 *
 * <p><b>Knee.</b> Over the last stretch, as high as the charge that a 20 h discharge leaves behind,
 * the voltage falls in a straight line from the table's empty voltage to the cut-off at which
 * capacities are rated. The straight line is ours.
 *
 * <p><b>Dry.</b> A load that asked for more than the wells give gets nothing until charge flows in
 * or the available well has risen by 5 % of the capacity again (ours): otherwise a load at an empty
 * battery would go on and off with every tick.
 */
final class Wells {
    private static final double RISE_PART = 0.05;

    private final KineticCell cell;
    private final double base;
    private final double offset;
    private final double capacity;
    private final double cutOffVolts;

    // State.
    private boolean dry;

    // Derived from the temperature.
    private double kneeHeight;
    private double kneeSlope;
    private double floorHeight;

    // Derived at the start of each step.
    private double slope;

    /**
     * The wells that a battery's ratings give.
     *
     * @return null for a battery of one well
     */
    static @Nullable KineticWells given(BatterySpec spec) {
        Kinetic ratings = spec.traits().kinetic();
        return ratings == null
                ? null
                : Objects.requireNonNull(
                        ratings.wells(spec.capacityMicroampHours()),
                        "ratings of no kinetic battery");
    }

    /**
     * Creates the wells.
     *
     * @param wells of the battery as new
     * @param life part of the capacity that wear has left
     * @param string of cells; what a weak one keeps from being drawn lifts the floor
     * @param cutOffCellVolts end of the knee; 0 for no knee
     * @param charge true charge at the start, in coulombs
     */
    Wells(
            KineticWells wells,
            double life,
            CellString string,
            double cutOffCellVolts,
            double charge) {
        cell =
                KineticCell.of(
                        new KineticWells(
                                wells.availablePart(),
                                wells.perHour(),
                                wells.greatestAmpHours() * life));
        capacity = string.capacity();
        base = cell.capacity() - capacity;
        offset = string.offset();
        cutOffVolts = cutOffCellVolts * string.cells();
        cell.rest(charge + base);
    }

    void adopt(Wells other) {
        cell.adopt(other.cell);
        dry = other.dry;
    }

    /**
     * Moves the floor with the temperature.
     *
     * @param keptBack charge that cannot be drawn at it; below 0 for more than at 25 °C
     * @param emptyVolts open-circuit voltage of the empty battery
     */
    void setFloor(double keptBack, double emptyVolts) {
        // Warmth gives no more than the wells hold.
        floorHeight = Math.max(offset + keptBack, 0);
        kneeHeight = floorHeight + base - offset;
        kneeSlope = cutOffVolts > 0 ? Math.max(emptyVolts - cutOffVolts, 0) / (base - offset) : 0;
    }

    /**
     * Makes ready for steps of a length.
     *
     * @return height by current, in seconds
     */
    double prepare(double seconds) {
        cell.prepare(seconds);
        return cell.heightPerCurrent();
    }

    /** Open-circuit voltage at the end of the step if no current flows. */
    double openCircuitVolts(OpenCircuitCurve curve) {
        double height = cell.freeHeight();
        double charge = height - base;
        double volts;
        if (charge >= 0) {
            volts = curve.voltsAt(Math.min(charge, capacity));
            slope = curve.slope();
        } else {
            volts = curve.emptyVolts();
            slope = 0;
        }
        if (height < kneeHeight) {
            volts -= kneeSlope * (kneeHeight - height);
            slope += kneeSlope;
        }
        return volts;
    }

    /** Slope of that voltage against height, volts per coulomb. */
    double slope() {
        return slope;
    }

    /** Most current that can be drawn through the step. */
    double drawableAmps() {
        return dry ? 0 : Math.max(cell.greatestCurrentOut(floorHeight), 0);
    }

    void runDry() {
        dry = true;
    }

    /**
     * Moves through the step.
     *
     * @param stored current, positive into the battery
     * @param lost self-discharge, coulombs
     * @return true charge, below 0 by what a slower than the 20 h discharge has drawn
     */
    double advance(double stored, double lost) {
        cell.advance(stored);
        cell.lose(lost);
        cell.level();
        if (dry && (stored > 0 || cell.height() >= floorHeight + RISE_PART * capacity)) {
            dry = false;
        }
        return cell.total() - base;
    }

    /** Time that a constant current can be drawn from here. */
    double secondsToEmpty(double amps) {
        return dry ? 0 : cell.timeToEmpty(amps, floorHeight);
    }
}
