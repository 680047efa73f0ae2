package org.gaugebench.core.port;

/**
 * What can be wrong. A fault is a bit; its ordinal is its bit number.
 *
 * <p>A <em>momentary</em> fault belongs to one tick: that tick's figures are not to be trusted. A
 * <em>standing</em> one was worked out over minutes or days and stands until it no longer holds.
 */
public enum Fault {
    /** The shunt converter stands at a rail or the current exceeds 32 bits of microamps. */
    SHUNT_CLIPPED(false, "shunt reading clipped"),
    /** The voltage converter stands at its upper rail. */
    VOLTAGE_CLIPPED(false, "voltage reading clipped"),
    /** Counts outside the converter's code range: no converter of that width can send them. */
    COUNTS_IMPLAUSIBLE(false, "counts outside the converter's range"),
    /** More than 65,535 ms between two samples: the interval was not counted. */
    SAMPLES_MISSING(false, "samples missing"),
    /** The clock went backwards, or jumped by more than half its range. */
    CLOCK_BACKWARDS(false, "clock went backwards"),
    /** Two samples with the same clock: the second was not counted. */
    SAMPLE_REPEATED(false, "sample repeated"),
    /** Steps of current move the voltage the wrong way: shunt or sense leads are swapped. */
    POLARITY_REVERSED(true, "voltage falls when charge flows in: polarity reversed?"),
    /**
     * The voltage moves in steps and no current does: sense lead open, reading stuck, or no
     * battery.
     */
    CURRENT_NOT_SEEN(true, "voltage steps without current: sensor or battery not connected?"),
    /** The series resistance is twice what it was: a joint or the battery. */
    RESISTANCE_RISEN(true, "series resistance has doubled"),
    /** A week's charge in and out do not fit: something bypasses the shunt. */
    IN_OUT_RATIO_OFF(true, "charge in and out do not balance: something bypasses the shunt?"),
    /** Charging stopped in a step at full voltage: a protection circuit or an isolator opened. */
    CHARGING_STOPPED_EARLY(true, "charging stopped early"),
    /** Full voltage and no charge has flowed: charging blocked or battery not connected. */
    CHARGING_BLOCKED(true, "charging blocked or battery not connected"),
    /** Not full for longer than the settings allow. */
    FULL_OVERDUE(true, "full charge overdue"),
    /** The last full charge contradicted the count: scale, capacity or wiring is wrong. */
    SCALE_SUSPECT(true, "full contradicted the count: check shunt rating, capacity, wiring"),
    /** The battery ended earlier than counted: aged, cold, or a weak cell. */
    EMPTY_EARLY(true, "empty earlier than counted"),
    /** The measured capacity is under four fifths of the declared one. */
    CAPACITY_WORN(true, "capacity under four fifths of the declared"),
    /** The memory did not take what was saved. */
    MEMORY_FAILING(true, "memory failing"),
    /** No valid saved state was found where one should be: adjustments are lost. */
    ADJUSTMENT_LOST(true, "saved state and adjustments lost");

    private final boolean standing;
    private final String sentence;

    Fault(boolean standing, String sentence) {
        this.standing = standing;
        this.sentence = sentence;
    }

    /**
     * Whether the fault stands over time.
     *
     * @return false for a fault of a single tick
     */
    public boolean isStanding() {
        return standing;
    }

    /**
     * The fault's bit in {@link Register#FAULT_BITS}.
     *
     * @return a single bit
     */
    public int bit() {
        return 1 << ordinal();
    }

    /**
     * What is wrong, for people.
     *
     * @return a few words without a full stop
     */
    public String sentence() {
        return sentence;
    }
}
