/*
 * Everything that the reading and its error band need after a restart, as named numbers, and the
 * table of its bytes (docs/saved-state.md): F64, F32 and F8 in the order of SavedField.
 */
#ifndef GAUGE_SAVED_SAVED_STATE_H
#define GAUGE_SAVED_SAVED_STATE_H

#include <stdint.h>

#define SAVED_FIELD_LIST(F64, F32, F8) \
    F64(charge_nanocoulombs) \
    F64(capacity_nanocoulombs) \
    F64(band_millis) \
    F64(band_net_nanocoulombs) \
    F64(band_gross_nanocoulombs) \
    F64(band_charge_in_nanocoulombs) \
    F64(band_gap_nanocoulombs) \
    F64(band_residual_ppm) \
    F64(surplus_nanocoulombs) \
    F64(deficit_nanocoulombs) \
    F64(rule_discharged_nanocoulombs) \
    F64(band_warm_millis_q8) \
    F64(since_full_minutes) \
    F64(lifetime_in_nanocoulombs) \
    F64(lifetime_out_nanocoulombs) \
    F64(lifetime_in_microjoules) \
    F64(lifetime_out_microjoules) \
    F64(lifetime_uptime_millis) \
    F32(zero_adjustment_counts_q8) \
    F32(span_adjustment_ppm) \
    F32(efficiency_remainder_q16) \
    F32(full_count) \
    F32(measured_capacity_milliamp_hours) \
    F32(measured_efficiency_ppm) \
    F32(evidence_capacity_milliamp_hours) \
    F32(evidence_efficiency_ppm) \
    F32(early_end_ppm) \
    F32(voltage_microvolts) \
    F32(current_microamps) \
    F32(saves_count) \
    F8(full_proven) \
    F8(rule_armed) \
    F8(trust_code) \
    F8(empty_armed)

#define SAVED_AS_INT64(name) int64_t name;
#define SAVED_AS_INT32(name) int32_t name;
#define SAVED_AS_INT8(name) int8_t name;

/* A flag is 0 or 1, and any value but 0 reads as true. */
struct saved_state {
    SAVED_FIELD_LIST(SAVED_AS_INT64, SAVED_AS_INT32, SAVED_AS_INT8)
};

#endif
