/*
 * The table of everything inside the gauge that can be looked at, in the order in which a sample
 * passes; the same table in the same order as port.Register. R(name, unit).
 */
#ifndef GAUGE_PORT_REGISTER_LIST_H
#define GAUGE_PORT_REGISTER_LIST_H

#define REGISTER_LIST(R) \
    R(CLOCK_MILLIS, "ms") \
    R(UPTIME_MILLIS, "ms") \
    R(SHUNT_COUNTS, "counts") \
    R(VOLTAGE_COUNTS, "counts") \
    R(CURRENT_MICROAMPS, "uA") \
    R(VOLTAGE_MICROVOLTS, "uV") \
    R(TEMPERATURE_MILLICELSIUS, "m°C") \
    R(ZERO_ADJUSTMENT_COUNTS_Q8, "counts/256") \
    R(SPAN_ADJUSTMENT_PARTS_PER_MILLION, "ppm") \
    R(IN_NANOCOULOMBS, "nC") \
    R(OUT_NANOCOULOMBS, "nC") \
    R(MINUTE_NANOCOULOMBS, "nC") \
    R(MINUTE_MILLIS, "ms") \
    R(SETTLED_NANOCOULOMBS, "nC") \
    R(EFFICIENCY_REMAINDER_Q16, "nC/65536") \
    R(CHARGE_NANOCOULOMBS, "nC") \
    R(CAPACITY_NANOCOULOMBS, "nC") \
    R(SURPLUS_NANOCOULOMBS, "nC") \
    R(DEFICIT_NANOCOULOMBS, "nC") \
    R(STATE_OF_CHARGE_PARTS_PER_MILLION, "ppm") \
    R(LOWER_EDGE_PARTS_PER_MILLION, "ppm") \
    R(UPPER_EDGE_PARTS_PER_MILLION, "ppm") \
    R(BAND_RESIDUAL_PARTS_PER_MILLION, "ppm") \
    R(BAND_MILLIS, "ms") \
    R(BAND_NET_NANOCOULOMBS, "nC") \
    R(BAND_GROSS_NANOCOULOMBS, "nC") \
    R(BAND_IN_NANOCOULOMBS, "nC") \
    R(BAND_GAP_NANOCOULOMBS, "nC") \
    R(BAND_WARM_MILLIS_Q8, "ms/256") \
    R(IN_MICROJOULES, "uJ") \
    R(OUT_MICROJOULES, "uJ") \
    R(MINUTE_MEAN_MICROAMPS, "uA") \
    R(MINUTE_LOWEST_MICROVOLTS, "uV") \
    R(RULE_THRESHOLD_MICROVOLTS, "uV") \
    R(RULE_STATE, "state") \
    R(RULE_REASON, "reason") \
    R(RULE_HELD_MINUTES, "min") \
    R(RULE_DISCHARGED_NANOCOULOMBS, "nC") \
    R(FULL_COUNT, "times") \
    R(RULE_STATES_SEEN, "bits") \
    R(RULE_TRANSITIONS_SEEN, "bits") \
    R(RULE_REASONS_SEEN, "bits") \
    R(EMPTY_COUNT, "times") \
    R(RESTED_MINUTES, "min") \
    R(MINUTES_SINCE_FULL, "min") \
    R(RESISTANCE_MICROOHMS, "uOhm") \
    R(MEASURED_CAPACITY_MILLIAMP_HOURS, "mAh") \
    R(MEASURED_EFFICIENCY_PARTS_PER_MILLION, "ppm") \
    R(FILTERED_MICROAMPS_Q8, "uA/256") \
    R(TIME_TO_EMPTY_STATE, "state") \
    R(TIME_TO_EMPTY_MINUTES, "min") \
    R(TIME_TO_EMPTY_LOW_MINUTES, "min") \
    R(TIME_TO_EMPTY_HIGH_MINUTES, "min") \
    R(TIME_AT_THIS_LOAD_MINUTES, "min") \
    R(TIME_AT_USUAL_USE_MINUTES, "min") \
    R(TIME_TO_FULL_STATE, "state") \
    R(TIME_TO_FULL_MINUTES, "min") \
    R(SHOWN_PERCENT, "%") \
    R(SHOWN_MILLIAMPS, "mA") \
    R(SHOWN_TIME_TO_EMPTY_MINUTES, "min") \
    R(LOW_CHARGE_ALARM, "0 or 1") \
    R(TRUST, "state") \
    R(SAVES, "times") \
    R(FAULT_BITS, "bits") \
    R(FAULT_TICKS, "ticks")

#endif
