/*
 * Works out the capacity from a discharge that began at a proven full and ended at the empty
 * voltage (C1, C2), if the cycle is fit for use as evidence.
 */
#ifndef GAUGE_RULES_CAPACITY_ESTIMATE_H
#define GAUGE_RULES_CAPACITY_ESTIMATE_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "rules/measured_value.h"
#include "settings/gauge_settings.h"

struct capacity_estimate {
    struct measured_value milliamp_hours;
    int64_t empty_ppm;
    /* The cycle since the last full anchor that is evidence. */
    int64_t out_nanocoulombs;
    int32_t minutes;
    bool fit;
    bool switched_off;
};

void capacity_estimate_init(struct capacity_estimate *c, const struct gauge_settings *settings);

/* Full was proven or declared; evidence: the proof is fit for use. */
void capacity_estimate_full(struct capacity_estimate *c, bool evidence);

void capacity_estimate_add_minute(struct capacity_estimate *c, const struct minute_figures *minute,
                                  int32_t temperature_millicelsius);

/* The battery reached its empty voltage; answers whether the measured capacity moved. */
bool capacity_estimate_empty(struct capacity_estimate *c);

void capacity_estimate_forget(struct capacity_estimate *c);

/* The cycle under way does not survive a restart. */
void capacity_estimate_resume(struct capacity_estimate *c, int64_t measured, int64_t candidate);

#endif
