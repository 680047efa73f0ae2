/*
 * How much of the charge can be had at a current and a temperature (T4); for hours only, never for
 * the count. What stays behind is the same charge however full the battery is.
 */
#ifndef GAUGE_ESTIMATE_RATE_MODEL_H
#define GAUGE_ESTIMATE_RATE_MODEL_H

#include <stdint.h>

#include "settings/gauge_settings.h"

struct rate_model {
    int64_t capacity_nanocoulombs;
    int32_t log2_rated_q24;
    int32_t exponent_less_one_ppm;
    /* Straight lines through 25 degrees (the whole), 10, 0 and -20. */
    int32_t at_10_ppm;
    int32_t at_0_ppm;
    int32_t at_minus_20_ppm;
};

void rate_model_init(struct rate_model *model, const struct gauge_settings *settings);

/* The factor by which a current counts for more than itself, 24 fraction bits, at least 1. */
int64_t rate_model_factor_q24(const struct rate_model *model, int32_t current_microamps);

/* The part of the charge that can be had at a temperature, 1 to 1,000,000. */
int32_t rate_model_warm_ppm(const struct rate_model *model, int32_t millicelsius);

/* The charge that stays in the battery, rounded up; 0 while charging. */
int64_t rate_model_behind_nanocoulombs(const struct rate_model *model, int32_t current_microamps,
                                       int32_t millicelsius);

/* The charge less what stays behind, at least 0. */
int64_t rate_model_usable_nanocoulombs(const struct rate_model *model, int64_t charge_nanocoulombs,
                                       int32_t current_microamps, int32_t millicelsius);

#endif
