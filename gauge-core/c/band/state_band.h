/*
 * The interval in which the true state of charge lies: the band around the count, clipped by what
 * one-sided facts leave (B5, R6).
 */
#ifndef GAUGE_BAND_STATE_BAND_H
#define GAUGE_BAND_STATE_BAND_H

#include <stdbool.h>
#include <stdint.h>

#include "band/error_band.h"

/*
 * "At least" or "at most": keeps its distance from the count at the moment it was stated, plus a
 * band of its own that starts at 0 there.
 */
struct one_sided_fact {
    struct band_sums growth;
    int64_t distance_ppm;
    int64_t reach_ppm;
    bool set;
};

struct state_band {
    struct error_bounds bounds;
    struct band_sums sums;
    struct one_sided_fact at_least;
    struct one_sided_fact at_most;
    /* The last answer. */
    int32_t low_side_ppm;
    int32_t high_side_ppm;
    int32_t lower_edge_ppm;
    int32_t upper_edge_ppm;
};

/* A band that knows nothing. */
void state_band_init(struct state_band *band, const struct gauge_settings *settings,
                     int64_t step_microamps);

/* Time passes: measured, unmeasured, or without power, which no fact outlives. */
void state_band_add(struct state_band *band, const struct band_stretch *stretch);
void state_band_add_unmeasured(struct state_band *band, int64_t gap_millis);
void state_band_add_off_time(struct state_band *band, int64_t off_millis, int64_t mean_microamps);

/* The count was set to an anchor; or nothing is known any more. */
void state_band_anchor(struct state_band *band, int64_t residual_ppm);
void state_band_forget(struct state_band *band);

/* Two facts: the truth lies between these bounds. A fact clips the band and moves nothing. */
void state_band_clip(struct state_band *band, int32_t shown_ppm, int32_t lowest_ppm,
                     int32_t highest_ppm);

/* Works out the edges for the present count, in ppm and in nanocoulombs. */
void state_band_update(struct state_band *band, int32_t shown_ppm, int64_t charge_nanocoulombs);

/* The wider side. */
static inline int32_t state_band_half_width_ppm(const struct state_band *band)
{
    return max_int32(band->low_side_ppm, band->high_side_ppm);
}

/* Whether the figure says nothing any more (B4). */
static inline bool state_band_is_unknown(const struct state_band *band)
{
    return state_band_half_width_ppm(band) >= BAND_UNKNOWN_FROM_PPM;
}

#endif
