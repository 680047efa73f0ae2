package org.gaugebench.core.port;

/**
 * The table of everything inside the gauge that can be looked at, in the order in which a sample
 * passes. A port in another language prints the same table.
 */
public enum Register {
    /** Raw clock of the last sample. */
    CLOCK_MILLIS("ms"),
    /** Time since power-up, as the gauge counts it. */
    UPTIME_MILLIS("ms"),
    /** Raw shunt counts of the last sample. */
    SHUNT_COUNTS("counts"),
    /** Raw voltage counts of the last sample. */
    VOLTAGE_COUNTS("counts"),
    /** Current of the last sample. */
    CURRENT_MICROAMPS("uA"),
    /** Voltage of the last sample. */
    VOLTAGE_MICROVOLTS("uV"),
    /** Temperature of the last sample, or the absent mark. */
    TEMPERATURE_MILLICELSIUS("m°C"),
    /** Zero adjustment on top of the offset setting. */
    ZERO_ADJUSTMENT_COUNTS_Q8("counts/256"),
    /** Span adjustment. */
    SPAN_ADJUSTMENT_PARTS_PER_MILLION("ppm"),
    /** Charge into the battery since power-up, before efficiency, clamps and rules. */
    IN_NANOCOULOMBS("nC"),
    /** Charge out of the battery since power-up, a positive figure. */
    OUT_NANOCOULOMBS("nC"),
    /** Net charge of the minute under way. */
    MINUTE_NANOCOULOMBS("nC"),
    /** Length of the minute under way. */
    MINUTE_MILLIS("ms"),
    /** The count at the last whole minute. */
    SETTLED_NANOCOULOMBS("nC"),
    /** What the efficiency's floor has cut off so far. */
    EFFICIENCY_REMAINDER_Q16("nC/65536"),
    /** The count now, the minute under way included. */
    CHARGE_NANOCOULOMBS("nC"),
    /** Full-charge capacity. */
    CAPACITY_NANOCOULOMBS("nC"),
    /** What came in above the upper limit since the last full anchor. */
    SURPLUS_NANOCOULOMBS("nC"),
    /** What went out below zero since the last anchor, a positive figure. */
    DEFICIT_NANOCOULOMBS("nC"),
    /** State of charge, or -1 while unknown. */
    STATE_OF_CHARGE_PARTS_PER_MILLION("ppm"),
    /** Lowest state of charge that the band allows. */
    LOWER_EDGE_PARTS_PER_MILLION("ppm"),
    /** Highest state of charge that the band allows. */
    UPPER_EDGE_PARTS_PER_MILLION("ppm"),
    /** Residual of the last anchor. */
    BAND_RESIDUAL_PARTS_PER_MILLION("ppm"),
    /** Time since the last anchor. */
    BAND_MILLIS("ms"),
    /** Net charge since the last anchor. */
    BAND_NET_NANOCOULOMBS("nC"),
    /** Charge moved either way since the last anchor. */
    BAND_GROSS_NANOCOULOMBS("nC"),
    /** Charge put in since the last anchor, minute by minute net. */
    BAND_IN_NANOCOULOMBS("nC"),
    /** Charge that may have moved unmeasured since the last anchor. */
    BAND_GAP_NANOCOULOMBS("nC"),
    /** Time since the last anchor weighted by warmth. */
    BAND_WARM_MILLIS_Q8("ms/256"),
    /** Energy into the battery since power-up. */
    IN_MICROJOULES("uJ"),
    /** Energy out of the battery since power-up, a positive figure. */
    OUT_MICROJOULES("uJ"),
    /** Mean current of the last whole minute. */
    MINUTE_MEAN_MICROAMPS("uA"),
    /** Lowest voltage of the last whole minute. */
    MINUTE_LOWEST_MICROVOLTS("uV"),
    /** Compensated voltage threshold of the full-charge rule. */
    RULE_THRESHOLD_MICROVOLTS("uV"),
    /** State of the full-charge rule, by ordinal. */
    RULE_STATE("state"),
    /** Reason of that state, by ordinal. */
    RULE_REASON("reason"),
    /** How long the rule has held. */
    RULE_HELD_MINUTES("min"),
    /** Discharged since full, up to the re-arm limit. */
    RULE_DISCHARGED_NANOCOULOMBS("nC"),
    /** Number of full anchors since power-up. */
    FULL_COUNT("times"),
    /** States of the full-charge rule visited since power-up, a bit each. */
    RULE_STATES_SEEN("bits"),
    /** Its transitions taken since power-up, bit from x 8 + to each. */
    RULE_TRANSITIONS_SEEN("bits"),
    /** Its reasons given since power-up, a bit each. */
    RULE_REASONS_SEEN("bits"),
    /** Number of empty anchors since power-up. */
    EMPTY_COUNT("times"),
    /** How long the battery has rested, up to the rest time. */
    RESTED_MINUTES("min"),
    /** Time since full was proven or declared. */
    MINUTES_SINCE_FULL("min"),
    /** Series resistance seen at steps of the current. */
    RESISTANCE_MICROOHMS("uOhm"),
    /** Measured capacity, or 0. */
    MEASURED_CAPACITY_MILLIAMP_HOURS("mAh"),
    /** Measured efficiency, or 0. */
    MEASURED_EFFICIENCY_PARTS_PER_MILLION("ppm"),
    /** Filtered current in 1/256 microamps. */
    FILTERED_MICROAMPS_Q8("uA/256"),
    /** Kind of the time to empty, by ordinal. */
    TIME_TO_EMPTY_STATE("state"),
    /** Time to empty. */
    TIME_TO_EMPTY_MINUTES("min"),
    /** Time to empty if the truth is at the lower edge of the band. */
    TIME_TO_EMPTY_LOW_MINUTES("min"),
    /** Time to empty if the truth is at the upper edge of the band. */
    TIME_TO_EMPTY_HIGH_MINUTES("min"),
    /** Time to empty at the present current. */
    TIME_AT_THIS_LOAD_MINUTES("min"),
    /** Time to empty at the mean load of the last day. */
    TIME_AT_USUAL_USE_MINUTES("min"),
    /** Kind of the time to full, by ordinal. */
    TIME_TO_FULL_STATE("state"),
    /** Time to full. */
    TIME_TO_FULL_MINUTES("min"),
    /** State of charge as a display shows it, or -1 while unknown. */
    SHOWN_PERCENT("%"),
    /** Current as a display shows it, in steps of 100 mA. */
    SHOWN_MILLIAMPS("mA"),
    /** Time to empty as a display shows it where there is one, else 0. */
    SHOWN_TIME_TO_EMPTY_MINUTES("min"),
    /** Whether the low-charge alarm stands. */
    LOW_CHARGE_ALARM("0 or 1"),
    /** Trust, by ordinal. */
    TRUST("state"),
    /** Saves tried since power-up. */
    SAVES("times"),
    /** Faults of the last tick and those that stand. */
    FAULT_BITS("bits"),
    /** Ticks with any fault since power-up. */
    FAULT_TICKS("ticks");

    private final String unit;

    Register(String unit) {
        this.unit = unit;
    }

    /**
     * Unit of the register's figure.
     *
     * @return an SI symbol or a plain word
     */
    public String unit() {
        return unit;
    }
}
