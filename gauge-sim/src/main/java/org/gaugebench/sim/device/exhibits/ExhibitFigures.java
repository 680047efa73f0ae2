package org.gaugebench.sim.device.exhibits;

import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Trust;

/** What an exhibit shows: the count as a figure, the hours, and what it takes for proven. */
final class ExhibitFigures {
    private final CountScale scale;
    private final HoursFigure hours;

    // What happened.
    private Trust trust = Trust.UNKNOWN;
    private int fullCount;
    private int emptyCount;
    private long learnedMilliampHours;

    // What is shown.
    private int stateOfChargePartsPerMillion = Readout.NOT_KNOWN;
    private long remainingNanocoulombs;
    private long capacityNanocoulombs;
    private int currentMicroamps;
    private double filteredMicroamps;

    ExhibitFigures(CountScale scale, HoursFigure hours) {
        this.scale = scale;
        this.hours = hours;
    }

    boolean isKnown() {
        return trust != Trust.UNKNOWN;
    }

    /** What it knew went with its working memory. */
    void forget() {
        trust = Trust.UNKNOWN;
    }

    void declared() {
        trust = Trust.DECLARED;
    }

    /** A gauge with a simple rule takes its own belief for proof. */
    void full() {
        fullCount++;
        trust = Trust.PROVEN;
    }

    void empty() {
        emptyCount++;
        trust = Trust.PROVEN;
    }

    long learned(double newCapacityNanocoulombs) {
        learnedMilliampHours =
                StrictMath.round(
                        newCapacityNanocoulombs / CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR);
        return learnedMilliampHours;
    }

    void update(
            long shownCountMillis,
            long capacityCountMillis,
            double newCapacityNanocoulombs,
            double microamps,
            double newFilteredMicroamps) {
        double nanocoulombs = scale.nanocoulombs(shownCountMillis);
        remainingNanocoulombs = StrictMath.round(nanocoulombs);
        capacityNanocoulombs = StrictMath.round(newCapacityNanocoulombs);
        currentMicroamps = scale.wholeMicroamps(microamps);
        filteredMicroamps = newFilteredMicroamps;
        boolean known = isKnown();
        stateOfChargePartsPerMillion =
                known ? parts(shownCountMillis, capacityCountMillis) : Readout.NOT_KNOWN;
        hours.update(known, nanocoulombs, newFilteredMicroamps);
    }

    /** A count that nothing stops may be -1 ppm, which would read as "not known". */
    private static int parts(long countMillis, long capacityCountMillis) {
        double parts = 1e6 * countMillis / capacityCountMillis;
        int whole = CountScale.whole(parts, 2_000_000_000);
        return whole == Readout.NOT_KNOWN ? 0 : whole;
    }

    /** Fills what may jump in any tick, and leaves aside what costs as much and does not. */
    void readJumping(
            Readout readout,
            long shownCountMillis,
            long capacityCountMillis,
            double newFilteredMicroamps) {
        boolean known = isKnown();
        readout.stateOfChargePartsPerMillion =
                known ? parts(shownCountMillis, capacityCountMillis) : Readout.NOT_KNOWN;
        if (hours.isOffered()) {
            hours.update(known, scale.nanocoulombs(shownCountMillis), newFilteredMicroamps);
            readout.timeToEmptyState = hours.state();
            readout.timeToEmptyMinutes = hours.minutes();
        }
    }

    void read(Readout readout) {
        readout.stateOfChargePartsPerMillion = stateOfChargePartsPerMillion;
        readout.remainingNanocoulombs = remainingNanocoulombs;
        readout.fullChargeNanocoulombs = capacityNanocoulombs;
        readout.measuredCapacityMilliampHours = learnedMilliampHours;
        readout.currentMicroamps = currentMicroamps;
        readout.averageCurrentMicroamps = scale.wholeMicroamps(filteredMicroamps);
        readout.timeToEmptyState = hours.state();
        readout.timeToEmptyMinutes = hours.minutes();
        readout.trust = trust;
    }

    void inspect(Registers registers) {
        registers.set(Register.CURRENT_MICROAMPS, currentMicroamps);
        registers.set(Register.CHARGE_NANOCOULOMBS, remainingNanocoulombs);
        registers.set(Register.CAPACITY_NANOCOULOMBS, capacityNanocoulombs);
        registers.set(Register.STATE_OF_CHARGE_PARTS_PER_MILLION, stateOfChargePartsPerMillion);
        registers.set(Register.FULL_COUNT, fullCount);
        registers.set(Register.EMPTY_COUNT, emptyCount);
        registers.set(Register.MEASURED_CAPACITY_MILLIAMP_HOURS, learnedMilliampHours);
        registers.set(Register.FILTERED_MICROAMPS_Q8, StrictMath.round(filteredMicroamps * 256));
        registers.set(Register.TIME_TO_EMPTY_STATE, hours.state().ordinal());
        registers.set(Register.TIME_TO_EMPTY_MINUTES, hours.minutes());
        registers.set(Register.TRUST, trust.ordinal());
    }
}
