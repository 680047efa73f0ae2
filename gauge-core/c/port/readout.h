/* What a display may show, all of one instant. The caller owns one; gauge_read fills it. */
#ifndef GAUGE_PORT_READOUT_H
#define GAUGE_PORT_READOUT_H

#include <stdbool.h>
#include <stdint.h>

#include "port/codes.h"

/* Stands in a state of charge or a percentage while nothing is known. */
#define READOUT_NOT_KNOWN (-1)

struct readout {
    /* 0 to 1,000,000 ppm of the full-charge capacity, or READOUT_NOT_KNOWN. */
    int32_t state_of_charge_ppm;
    /* The ends of the error band, and whether it says nothing any more. */
    int32_t lower_edge_ppm;
    int32_t upper_edge_ppm;
    bool band_unknown;
    /* 0 while nothing is known. */
    int64_t remaining_nanocoulombs;
    int64_t full_charge_nanocoulombs;
    /* What the gauge worked out by itself; 0 while there is none. */
    int64_t measured_capacity_milliamp_hours;
    int64_t measured_efficiency_ppm;
    /* Of the last sample; the average is the filtered current on which the hours rest. */
    int32_t current_microamps;
    int32_t average_current_microamps;
    int32_t voltage_microvolts;
    int32_t temperature_millicelsius;
    /* Time to empty at the average current, and at both edges of the band. */
    enum estimate_state time_to_empty_state;
    int32_t time_to_empty_minutes;
    int32_t time_to_empty_low_minutes;
    int32_t time_to_empty_high_minutes;
    /* At the present current, and at the mean discharge of the last day. */
    enum estimate_state time_at_this_load_state;
    int32_t time_at_this_load_minutes;
    enum estimate_state time_at_usual_use_state;
    int32_t time_at_usual_use_minutes;
    enum full_time_state time_to_full_state;
    int32_t time_to_full_minutes;
    /* As a display shows them (rules V1 to V3). */
    int32_t shown_percent;
    int32_t shown_milliamps;
    int32_t shown_time_to_empty_minutes;
    bool low_charge;
    enum rule_state rule_state;
    enum rule_reason rule_reason;
    enum trust trust;
    enum trust_reason trust_reason;
    /* Faults of the last tick and those that stand, by FAULT_BIT. */
    uint32_t fault_bits;
};

#endif
