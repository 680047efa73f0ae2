package org.gaugebench.core.saved;

/**
 * The table of saved fields in the order of their bytes: since which layout version, size, unit,
 * range, and how each is read from and put into a {@link SavedState}. Layout, codec, the
 * documentation and the tests all read this one table.
 *
 * <p>A field once released keeps its place, size and meaning for ever; a new one goes to the end
 * with the next layout version. A record older than a field leaves that field at zero, so zero must
 * mean "nothing known" there.
 */
public enum SavedField {
    /** {@link SavedState#chargeNanocoulombs}. */
    CHARGE_NANOCOULOMBS(
            1, 8, SavedRange.CHARGE, s -> s.chargeNanocoulombs, (s, v) -> s.chargeNanocoulombs = v),
    /** {@link SavedState#capacityNanocoulombs}. */
    CAPACITY_NANOCOULOMBS(
            1,
            8,
            SavedRange.CAPACITY,
            s -> s.capacityNanocoulombs,
            (s, v) -> s.capacityNanocoulombs = v),
    /** {@link SavedState#bandMillis}. */
    BAND_MILLIS(1, 8, SavedRange.BAND_TIME, s -> s.bandMillis, (s, v) -> s.bandMillis = v),
    /** {@link SavedState#bandNetNanocoulombs}. */
    BAND_NET_NANOCOULOMBS(
            1,
            8,
            SavedRange.BAND_NET,
            s -> s.bandNetNanocoulombs,
            (s, v) -> s.bandNetNanocoulombs = v),
    /** {@link SavedState#bandGrossNanocoulombs}. */
    BAND_GROSS_NANOCOULOMBS(
            1,
            8,
            SavedRange.BAND_SUM,
            s -> s.bandGrossNanocoulombs,
            (s, v) -> s.bandGrossNanocoulombs = v),
    /** {@link SavedState#bandChargeInNanocoulombs}. */
    BAND_CHARGE_IN_NANOCOULOMBS(
            1,
            8,
            SavedRange.BAND_SUM,
            s -> s.bandChargeInNanocoulombs,
            (s, v) -> s.bandChargeInNanocoulombs = v),
    /** {@link SavedState#bandGapNanocoulombs}. */
    BAND_GAP_NANOCOULOMBS(
            1,
            8,
            SavedRange.BAND_SUM,
            s -> s.bandGapNanocoulombs,
            (s, v) -> s.bandGapNanocoulombs = v),
    /** {@link SavedState#bandResidualPartsPerMillion}. */
    BAND_RESIDUAL_PARTS_PER_MILLION(
            1,
            8,
            SavedRange.PART,
            s -> s.bandResidualPartsPerMillion,
            (s, v) -> s.bandResidualPartsPerMillion = v),
    /** {@link SavedState#surplusNanocoulombs}. */
    SURPLUS_NANOCOULOMBS(
            1,
            8,
            SavedRange.CHARGE_SUM,
            s -> s.surplusNanocoulombs,
            (s, v) -> s.surplusNanocoulombs = v),
    /** {@link SavedState#deficitNanocoulombs}. */
    DEFICIT_NANOCOULOMBS(
            1,
            8,
            SavedRange.CHARGE_SUM,
            s -> s.deficitNanocoulombs,
            (s, v) -> s.deficitNanocoulombs = v),
    /** {@link SavedState#ruleDischargedNanocoulombs}. */
    RULE_DISCHARGED_NANOCOULOMBS(
            1,
            8,
            SavedRange.CHARGE,
            s -> s.ruleDischargedNanocoulombs,
            (s, v) -> s.ruleDischargedNanocoulombs = v),
    /** {@link SavedState#bandWarmMillisQ8}. */
    BAND_WARM_MILLIS_Q8(
            1,
            8,
            SavedRange.BAND_WARM_TIME,
            s -> s.bandWarmMillisQ8,
            (s, v) -> s.bandWarmMillisQ8 = v),
    /** {@link SavedState#sinceFullMinutes}. */
    MINUTES_SINCE_FULL(
            1, 8, SavedRange.MINUTES, s -> s.sinceFullMinutes, (s, v) -> s.sinceFullMinutes = v),
    /** {@link SavedState#lifetimeInNanocoulombs}. */
    LIFETIME_IN_NANOCOULOMBS(
            1,
            8,
            SavedRange.CHARGE_SUM,
            s -> s.lifetimeInNanocoulombs,
            (s, v) -> s.lifetimeInNanocoulombs = v),
    /** {@link SavedState#lifetimeOutNanocoulombs}. */
    LIFETIME_OUT_NANOCOULOMBS(
            1,
            8,
            SavedRange.CHARGE_SUM,
            s -> s.lifetimeOutNanocoulombs,
            (s, v) -> s.lifetimeOutNanocoulombs = v),
    /** {@link SavedState#lifetimeInMicrojoules}. */
    LIFETIME_IN_MICROJOULES(
            1,
            8,
            SavedRange.ENERGY_SUM,
            s -> s.lifetimeInMicrojoules,
            (s, v) -> s.lifetimeInMicrojoules = v),
    /** {@link SavedState#lifetimeOutMicrojoules}. */
    LIFETIME_OUT_MICROJOULES(
            1,
            8,
            SavedRange.ENERGY_SUM,
            s -> s.lifetimeOutMicrojoules,
            (s, v) -> s.lifetimeOutMicrojoules = v),
    /** {@link SavedState#lifetimeUptimeMillis}. */
    LIFETIME_UPTIME_MILLIS(
            1,
            8,
            SavedRange.LIFETIME,
            s -> s.lifetimeUptimeMillis,
            (s, v) -> s.lifetimeUptimeMillis = v),
    /** {@link SavedState#zeroAdjustmentCountsQ8}. */
    ZERO_ADJUSTMENT_COUNTS_Q8(
            1,
            4,
            SavedRange.ZERO_ADJUSTMENT,
            s -> s.zeroAdjustmentCountsQ8,
            (s, v) -> s.zeroAdjustmentCountsQ8 = (int) v),
    /** {@link SavedState#spanAdjustmentPartsPerMillion}. */
    SPAN_ADJUSTMENT_PARTS_PER_MILLION(
            1,
            4,
            SavedRange.SPAN_ADJUSTMENT,
            s -> s.spanAdjustmentPartsPerMillion,
            (s, v) -> s.spanAdjustmentPartsPerMillion = (int) v),
    /** {@link SavedState#efficiencyRemainderQ16}. */
    EFFICIENCY_REMAINDER_Q16(
            1,
            4,
            SavedRange.REMAINDER,
            s -> s.efficiencyRemainderQ16,
            (s, v) -> s.efficiencyRemainderQ16 = (int) v),
    /** {@link SavedState#fullCount}. */
    FULL_COUNT(1, 4, SavedRange.TIMES, s -> s.fullCount, (s, v) -> s.fullCount = (int) v),
    /** {@link SavedState#measuredCapacityMilliampHours}. */
    MEASURED_CAPACITY_MILLIAMP_HOURS(
            1,
            4,
            SavedRange.MEASURED_CAPACITY,
            s -> s.measuredCapacityMilliampHours,
            (s, v) -> s.measuredCapacityMilliampHours = (int) v),
    /** {@link SavedState#measuredEfficiencyPartsPerMillion}. */
    MEASURED_EFFICIENCY_PARTS_PER_MILLION(
            1,
            4,
            SavedRange.PART,
            s -> s.measuredEfficiencyPartsPerMillion,
            (s, v) -> s.measuredEfficiencyPartsPerMillion = (int) v),
    /** {@link SavedState#evidenceCapacityMilliampHours}. */
    EVIDENCE_CAPACITY_MILLIAMP_HOURS(
            1,
            4,
            SavedRange.EVIDENCE_CAPACITY,
            s -> s.evidenceCapacityMilliampHours,
            (s, v) -> s.evidenceCapacityMilliampHours = (int) v),
    /** {@link SavedState#evidenceEfficiencyPartsPerMillion}. */
    EVIDENCE_EFFICIENCY_PARTS_PER_MILLION(
            1,
            4,
            SavedRange.EVIDENCE_EFFICIENCY,
            s -> s.evidenceEfficiencyPartsPerMillion,
            (s, v) -> s.evidenceEfficiencyPartsPerMillion = (int) v),
    /** {@link SavedState#earlyEndPartsPerMillion}. */
    EARLY_END_PARTS_PER_MILLION(
            1,
            4,
            SavedRange.EARLY_END,
            s -> s.earlyEndPartsPerMillion,
            (s, v) -> s.earlyEndPartsPerMillion = (int) v),
    /** {@link SavedState#voltageMicrovolts}. */
    VOLTAGE_MICROVOLTS(
            1,
            4,
            SavedRange.VOLTAGE,
            s -> s.voltageMicrovolts,
            (s, v) -> s.voltageMicrovolts = (int) v),
    /** {@link SavedState#currentMicroamps}. */
    CURRENT_MICROAMPS(
            1,
            4,
            SavedRange.CURRENT,
            s -> s.currentMicroamps,
            (s, v) -> s.currentMicroamps = (int) v),
    /** {@link SavedState#savesCount}. */
    SAVES_COUNT(1, 4, SavedRange.TIMES, s -> s.savesCount, (s, v) -> s.savesCount = (int) v),
    /** {@link SavedState#fullProven}. */
    FULL_PROVEN(1, 1, SavedRange.FLAG, s -> s.fullProven ? 1 : 0, (s, v) -> s.fullProven = v != 0),
    /** {@link SavedState#ruleArmed}. */
    RULE_ARMED(1, 1, SavedRange.FLAG, s -> s.ruleArmed ? 1 : 0, (s, v) -> s.ruleArmed = v != 0),
    /** {@link SavedState#trustCode}. */
    TRUST_CODE(1, 1, SavedRange.TRUST_CODE, s -> s.trustCode, (s, v) -> s.trustCode = (int) v),
    /** {@link SavedState#emptyArmed}. */
    EMPTY_ARMED(1, 1, SavedRange.FLAG, s -> s.emptyArmed ? 1 : 0, (s, v) -> s.emptyArmed = v != 0);

    private final int sinceVersion;
    private final int sizeBytes;

    // Error Prone cannot see that these hold no state: a record of a text and two numbers, and
    // lambdas without captures.
    @SuppressWarnings("ImmutableEnumChecker")
    private final SavedRange range;

    @SuppressWarnings("ImmutableEnumChecker")
    private final Getter getter;

    @SuppressWarnings("ImmutableEnumChecker")
    private final Setter setter;

    SavedField(int sinceVersion, int sizeBytes, SavedRange range, Getter getter, Setter setter) {
        this.sinceVersion = sinceVersion;
        this.sizeBytes = sizeBytes;
        this.range = range;
        this.getter = getter;
        this.setter = setter;
    }

    /** Reads one field of a state. */
    @FunctionalInterface
    private interface Getter {
        long get(SavedState state);
    }

    /** Puts one field into a state. */
    @FunctionalInterface
    private interface Setter {
        void set(SavedState state, long value);
    }

    /**
     * The first layout version that holds the field.
     *
     * @return a version, at least 1
     */
    public int sinceVersion() {
        return sinceVersion;
    }

    /**
     * How many bytes the field takes.
     *
     * @return 1, 4 or 8
     */
    public int sizeBytes() {
        return sizeBytes;
    }

    /**
     * Unit of the field's figure.
     *
     * @return an SI symbol or a plain word
     */
    public String unit() {
        return range.unit();
    }

    /** Whether a core can have written this figure (M7). */
    boolean allows(long value) {
        return range.holds(value);
    }

    /**
     * The lowest figure that a core ever writes; a record with a lower one is broken (M7).
     *
     * @return in {@link #unit()}; -128 for a flag, which may be any byte
     */
    public long lowest() {
        return range.lowestValue();
    }

    /**
     * The highest figure that a core ever writes; a record with a higher one is broken (M7).
     *
     * @return in {@link #unit()}; 127 for a flag, which may be any byte
     */
    public long highest() {
        return range.highestValue();
    }

    /**
     * Reads this field of a state.
     *
     * @param state where to read
     * @return its value, a flag as 0 or 1
     */
    public long get(SavedState state) {
        return getter.get(state);
    }

    /**
     * Puts a value into this field of a state.
     *
     * <p><b>Range:</b> the value comes from {@link #sizeBytes} bytes with the sign extended, so
     * narrowing to the field's own type loses nothing; a flag takes any value but 0 as true.
     *
     * @param state where to put it
     * @param value the value
     */
    public void set(SavedState state, long value) {
        setter.set(state, value);
    }
}
