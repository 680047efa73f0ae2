/*
 * Everything that the reading and its error band need after a restart, as named numbers, and the
 * table of its bytes (docs/saved-state.md): F64, F32 and F8 in the order of SavedField, each with
 * the lowest and the highest figure that a core can have written (M7).
 */
#ifndef GAUGE_SAVED_SAVED_STATE_H
#define GAUGE_SAVED_SAVED_STATE_H

#include <stdint.h>

#include "fixed/fixed_math.h"
#include "sense/shunt_adjustment.h"

#define SAVED_MOST_CAPACITY INT64_C(36000000000000000)

/* Where the error band stops to add time up: 17 years. */
#define SAVED_LONGEST_BAND (INT64_C(1) << 39)

#define SAVED_FIELD_LIST(F64, F32, F8) \
    F64(charge_nanocoulombs, 0, SAVED_MOST_CAPACITY) \
    F64(capacity_nanocoulombs, INT64_C(360000000000), SAVED_MOST_CAPACITY) \
    F64(band_millis, 0, SAVED_LONGEST_BAND) \
    F64(band_net_nanocoulombs, -FIXED_LARGEST_SUM, FIXED_LARGEST_SUM) \
    F64(band_gross_nanocoulombs, 0, FIXED_LARGEST_SUM) \
    F64(band_charge_in_nanocoulombs, 0, FIXED_LARGEST_SUM) \
    F64(band_gap_nanocoulombs, 0, FIXED_LARGEST_SUM) \
    F64(band_residual_ppm, 0, 1000000) \
    F64(surplus_nanocoulombs, 0, INT64_MAX) \
    F64(deficit_nanocoulombs, 0, INT64_MAX) \
    F64(rule_discharged_nanocoulombs, 0, SAVED_MOST_CAPACITY) \
    F64(band_warm_millis_q8, 0, (SAVED_LONGEST_BAND << 8)) \
    F64(since_full_minutes, 0, (INT64_C(1) << 40)) \
    F64(lifetime_in_nanocoulombs, 0, INT64_MAX) \
    F64(lifetime_out_nanocoulombs, 0, INT64_MAX) \
    F64(lifetime_in_microjoules, 0, INT64_MAX) \
    F64(lifetime_out_microjoules, 0, INT64_MAX) \
    F64(lifetime_uptime_millis, 0, INT64_MAX) \
    F32(zero_adjustment_counts_q8, -SHUNT_LARGEST_ZERO_COUNTS_Q8, SHUNT_LARGEST_ZERO_COUNTS_Q8) \
    F32(span_adjustment_ppm, -SHUNT_LARGEST_GAIN_PPM, SHUNT_LARGEST_GAIN_PPM) \
    F32(efficiency_remainder_q16, 0, 65535) \
    F32(full_count, 0, INT32_MAX) \
    F32(measured_capacity_milliamp_hours, 0, 11000000) \
    F32(measured_efficiency_ppm, 0, 1000000) \
    F32(evidence_capacity_milliamp_hours, 0, 180000000) \
    F32(evidence_efficiency_ppm, 0, 1000010) \
    F32(early_end_ppm, -1, 1000000) \
    F32(voltage_microvolts, 0, 100000000) \
    F32(current_microamps, -INT32_MAX, INT32_MAX) \
    F32(saves_count, 0, INT32_MAX) \
    F8(full_proven, INT8_MIN, INT8_MAX) \
    F8(rule_armed, INT8_MIN, INT8_MAX) \
    F8(trust_code, 0, 2) \
    F8(empty_armed, INT8_MIN, INT8_MAX)

#define SAVED_AS_INT64(name, low, high) int64_t name;
#define SAVED_AS_INT32(name, low, high) int32_t name;
#define SAVED_AS_INT8(name, low, high) int8_t name;

/* A flag is 0 or 1, and any value but 0 reads as true. */
struct saved_state {
    SAVED_FIELD_LIST(SAVED_AS_INT64, SAVED_AS_INT32, SAVED_AS_INT8)
};

#endif
