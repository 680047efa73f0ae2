/* Voltage counts become microvolts: counts x full scale / 2^bits (arithmetic.md, stage 3). */
#ifndef GAUGE_SENSE_VOLTAGE_SENSE_H
#define GAUGE_SENSE_VOLTAGE_SENSE_H

#include <stdbool.h>
#include <stdint.h>

#include "fixed/scale_factor.h"
#include "settings/gauge_settings.h"

struct voltage_sense {
    struct scale_factor microvolts_per_count;
    int32_t highest_counts;
};

void voltage_sense_init(struct voltage_sense *sense, const struct gauge_settings *settings);

/* 0 to 1e8 uV; counts are clipped to 0 to 2^bits - 1. */
static inline int32_t voltage_sense_microvolts(const struct voltage_sense *sense,
                                               int32_t voltage_counts)
{
    return clamp_to_int32(
        scale_factor_apply(&sense->microvolts_per_count, max_int32(voltage_counts, 0)));
}

/* Neither clipped nor implausible. */
static inline bool voltage_sense_is_in_range(const struct voltage_sense *sense,
                                             int32_t voltage_counts)
{
    return voltage_counts >= 0 && voltage_counts < sense->highest_counts;
}

/* Of a reading in range. */
static inline int32_t voltage_sense_microvolts_in_range(const struct voltage_sense *sense,
                                                        int32_t voltage_counts)
{
    return (int32_t)scale_factor_apply_to_magnitude(&sense->microvolts_per_count, voltage_counts);
}

/* At or beyond the upper rail (G8). */
static inline bool voltage_sense_is_clipped(const struct voltage_sense *sense,
                                            int32_t voltage_counts)
{
    return voltage_counts >= sense->highest_counts;
}

/* No converter of the configured width can have sent this (G7). */
static inline bool voltage_sense_is_implausible(const struct voltage_sense *sense,
                                                int32_t voltage_counts)
{
    return voltage_counts < 0 || voltage_counts > sense->highest_counts;
}

#endif
