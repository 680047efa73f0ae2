/*
 * Shunt counts become microamps by one multiplication: gain of the converter and value of the
 * shunt are one combined factor (arithmetic.md, stage 2).
 */
#ifndef GAUGE_SENSE_CURRENT_SENSE_H
#define GAUGE_SENSE_CURRENT_SENSE_H

#include <stdbool.h>
#include <stdint.h>

#include "fixed/scale_factor.h"
#include "settings/gauge_settings.h"

/* A little under 2^31, so that the factor keeps at least 32 fraction bits. */
#define CURRENT_LARGEST_MICROAMPS ((INT64_C(1) << 31) - 3)

struct current_sense {
    struct scale_factor microamps_per_count_q8;
    int32_t lowest_counts;
    int32_t highest_counts;
    int32_t lowest_in_range_counts;
    int32_t highest_in_range_counts;
    int32_t offset_counts_q8;
};

/*
 * Derives the factor; cold. Zero adjustment in 1/256 counts on top of the offset setting, span
 * adjustment -50,000 to 50,000 ppm.
 */
void current_sense_init(struct current_sense *sense, const struct gauge_settings *settings,
                        int32_t zero_counts_q8, int32_t gain_ppm);

/* 1/256 counts that a current is worth, by bisection; for adjustments, never in a tick. */
int32_t current_sense_counts_q8(const struct current_sense *sense, int32_t microamps);

static inline int64_t current_sense_input_q8(const struct current_sense *sense,
                                             int32_t shunt_counts)
{
    return (int64_t)shunt_counts * 256 - sense->offset_counts_q8;
}

/* Positive into the battery; clipped at the rails or the largest current, halves away from zero. */
static inline int32_t current_sense_microamps(const struct current_sense *sense,
                                              int32_t shunt_counts)
{
    return clamp_to_int32(scale_factor_apply(&sense->microamps_per_count_q8,
                                             current_sense_input_q8(sense, shunt_counts)));
}

/* Neither clipped nor implausible. */
static inline bool current_sense_is_in_range(const struct current_sense *sense,
                                             int32_t shunt_counts)
{
    return shunt_counts >= sense->lowest_in_range_counts &&
           shunt_counts <= sense->highest_in_range_counts;
}

/* Of a reading in range: at most the largest current and the rounding, below 2^31. */
static inline int32_t current_sense_microamps_in_range(const struct current_sense *sense,
                                                       int32_t shunt_counts)
{
    return (int32_t)scale_factor_apply_in_range(&sense->microamps_per_count_q8,
                                                current_sense_input_q8(sense, shunt_counts));
}

/* At a rail of the converter or at the largest current (G8). */
static inline bool current_sense_is_clipped(const struct current_sense *sense,
                                            int32_t shunt_counts)
{
    return !current_sense_is_in_range(sense, shunt_counts);
}

/* No converter of the configured width can have sent this (G7). */
static inline bool current_sense_is_implausible(const struct current_sense *sense,
                                                int32_t shunt_counts)
{
    return shunt_counts < sense->lowest_counts || shunt_counts > sense->highest_counts;
}

#endif
