package org.gaugebench.core.saved;

/**
 * Everything that the reading and its error band need after a restart, as named numbers. One object
 * is made at construction and reused: the gauge fills it before a save and reads it after a
 * restart.
 *
 * <p>Adding a field: declare it here, add its line at the end of {@link SavedField}.
 *
 * <p>Deliberately absent, and therefore starting again at power-up: the load filter and the hours,
 * the minute under way, the hold of a rule, the faults of the present tick, uptime since power-up.
 */
public final class SavedState {
    /** The count, the minute under way included; 0 to the full-charge capacity. */
    public long chargeNanocoulombs;

    /** Full-charge capacity in force, so that the percentage outlives a change of capacity. */
    public long capacityNanocoulombs;

    /** Band: time counted since the last anchor. */
    public long bandMillis;

    /** Band: net charge since the last anchor, positive into the battery. */
    public long bandNetNanocoulombs;

    /** Band: in and out added up since the last anchor, at least 0. */
    public long bandGrossNanocoulombs;

    /** Band: charge put in since the last anchor, at least 0. */
    public long bandChargeInNanocoulombs;

    /** Band: bound of what may have flowed in intervals without samples, at least 0. */
    public long bandGapNanocoulombs;

    /** Band: how wrong the last anchor itself may be; 1,000,000 while nothing is known. */
    public long bandResidualPartsPerMillion;

    /** What came in above the upper limit since the count was last set, at least 0. */
    public long surplusNanocoulombs;

    /** What went out below zero since the count was last set, at least 0. */
    public long deficitNanocoulombs;

    /** Discharged since full was proven, towards arming the full-charge rule again. */
    public long ruleDischargedNanocoulombs;

    /** Band: time since the last anchor weighted by warmth, at least 0. */
    public long bandWarmMillisQ8;

    /** Whole minutes since full was proven or declared, at least 0. */
    public long sinceFullMinutes;

    /** Charge into the battery over its life, at least 0. */
    public long lifetimeInNanocoulombs;

    /** Charge out of the battery over its life, at least 0. */
    public long lifetimeOutNanocoulombs;

    /** Energy into the battery over its life, at least 0. */
    public long lifetimeInMicrojoules;

    /** Energy out of the battery over its life, at least 0. */
    public long lifetimeOutMicrojoules;

    /** Time counted over the gauge's life. */
    public long lifetimeUptimeMillis;

    /** Zero adjustment, taken off every shunt reading. */
    public int zeroAdjustmentCountsQ8;

    /** Span adjustment, added to the gain. */
    public int spanAdjustmentPartsPerMillion;

    /** What the efficiency's floor has cut off so far, 0 to 65,535. */
    public int efficiencyRemainderQ16;

    /** Full anchors over the battery's life. */
    public int fullCount;

    /** Measured capacity in use; 0 for none. */
    public int measuredCapacityMilliampHours;

    /** Measured efficiency in use; 0 for none. */
    public int measuredEfficiencyPartsPerMillion;

    /** Evidence: the last capacity worked out and not yet confirmed; 0 for none. */
    public int evidenceCapacityMilliampHours;

    /** Evidence: the last efficiency worked out and not yet confirmed; 0 for none. */
    public int evidenceEfficiencyPartsPerMillion;

    /** The count at the last early end, 0 to 1,000,000; -1 for none. */
    public int earlyEndPartsPerMillion;

    /** Battery voltage when the record was written: tells a battery exchanged while off. */
    public int voltageMicrovolts;

    /** Current when the record was written: how far that voltage was a rested one. */
    public int currentMicroamps;

    /** Writes begun over the memory's life, for its wear; kept by {@link SlotRing} alone. */
    public int savesCount;

    /** Whether full is proven, which lifts the count's limit from 99 to 100 %. */
    public boolean fullProven;

    /** Whether the full-charge rule looks for full. */
    public boolean ruleArmed;

    /** How far the state of charge may be believed: ordinal of {@code port.Trust}. */
    public int trustCode;

    /** Whether the empty rule looks for empty. */
    public boolean emptyArmed;

    /** Creates a state of zeros, for reuse. */
    public SavedState() {}
}
