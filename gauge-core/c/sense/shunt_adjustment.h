/* Takes offset and gain errors out of the shunt channel (the Z rules). */
#ifndef GAUGE_SENSE_SHUNT_ADJUSTMENT_H
#define GAUGE_SENSE_SHUNT_ADJUSTMENT_H

#include <stdbool.h>
#include <stdint.h>

#include "port/codes.h"
#include "sense/current_sense.h"
#include "settings/gauge_settings.h"

/* Largest product of all span adjustments, either way (Z3). */
#define SHUNT_LARGEST_GAIN_PPM 50000

/* Largest sum of zero adjustments: with the largest offset setting on top it still fits. */
#define SHUNT_LARGEST_ZERO_COUNTS_Q8 (INT32_MAX - 65536)

struct shunt_adjustment {
    /* Parameters. */
    int64_t zero_limit_microamps;
    int64_t rated_microamps;
    /* State. */
    int64_t point_shown_microamps;
    int64_t point_reference_microamps;
    int32_t zero_counts_q8;
    int32_t gain_ppm;
    bool point_taken;
};

/* What the gauge showed over its last whole minute. */
struct shown_minute {
    int32_t mean_microamps;
    int32_t lowest_microamps;
    int32_t highest_microamps;
};

/* No adjustment. */
void shunt_adjustment_init(struct shunt_adjustment *a, const struct gauge_settings *settings);

/* Takes the mean of a minute for zero (Z1): OUTCOME_DONE, or why not. */
enum command_outcome shunt_adjustment_zero(struct shunt_adjustment *a,
                                           const struct shown_minute *minute,
                                           const struct current_sense *sense);

/* Takes one of two points of a span adjustment (Z2 to Z4). */
enum command_outcome shunt_adjustment_span(struct shunt_adjustment *a,
                                           const struct shown_minute *minute,
                                           int64_t reference_microamps);

/* Takes over a saved adjustment; the gain is clamped to its range. */
void shunt_adjustment_resume(struct shunt_adjustment *a, int32_t zero_counts_q8, int32_t gain_ppm);

#endif
