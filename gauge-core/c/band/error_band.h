/*
 * The gauge's own uncertainty (B1, B2): sums since the last anchor, and on demand the two
 * half-widths built from them. Java keeps bounds and sums in one object; here the bounds are apart,
 * because the band and its two facts share them.
 */
#ifndef GAUGE_BAND_ERROR_BAND_H
#define GAUGE_BAND_ERROR_BAND_H

#include <stdint.h>

#include "band/parts.h"
#include "settings/gauge_settings.h"

/* A half-width from which on the figure says nothing (B4). */
#define BAND_UNKNOWN_FROM_PPM 400000

/* What the settings say about each cause. */
struct error_bounds {
    int64_t nanocoulombs_per_millionth;
    int64_t offset_microamps;
    int64_t half_step_microamps;
    int64_t unmeasured_microamps;
    int64_t worst_microamps;
    int32_t loss_ppm;
    int32_t gain_ppm;
    int32_t asymmetry_ppm;
    int32_t efficiency_ppm;
    int32_t self_discharge_ppm;
    int32_t capacity_ppm;
};

/* Step: the current of one converter step; a standing current may hide half of it (B3). */
void error_bounds_init(struct error_bounds *bounds, const struct gauge_settings *settings,
                       int64_t step_microamps);

/* The sums since the last anchor. */
struct band_sums {
    int64_t residual_ppm;
    int64_t millis;
    int64_t net_nanocoulombs;
    int64_t gross_nanocoulombs;
    int64_t in_nanocoulombs;
    int64_t gap_nanocoulombs;
    int64_t warm_millis_q8;
};

/* The half-widths at one count. */
struct band_sides {
    int32_t low_ppm;
    int32_t high_ppm;
};

/* A measured stretch. Charges through the shunt, out as a positive figure. */
struct band_stretch {
    int64_t millis;
    int64_t in_nanocoulombs;
    int64_t out_nanocoulombs;
    int32_t warmth_q8;
};

void band_sums_add(struct band_sums *sums, const struct band_stretch *stretch);

/* Time in which the mean current may have been as much as this, either way; saturates at 2^62. */
void band_sums_add_gap(struct band_sums *sums, int64_t gap_millis, int64_t mean_microamps);

/* Time without power (M4): the battery went on discharging itself, 20 degrees are taken. */
void band_sums_add_off_time(struct band_sums *sums, int64_t off_millis, int64_t mean_microamps);

/* An anchor: the count is known to its residual and every sum starts again. */
void band_sums_anchor(struct band_sums *sums, int64_t residual_ppm);

/* Widens the residual itself: for a change that the sums cannot describe. */
void band_sums_widen(struct band_sums *sums, int64_t ppm);

/* Another capacity, the percentage kept (S2); an old one of 0 or less changes nothing. */
void band_sums_capacity_changed(struct band_sums *sums, const struct error_bounds *bounds,
                                int64_t old_milliamp_hours, int64_t new_milliamp_hours);

/* Clamps sums that were saved to what band_sums_add can reach. */
void band_sums_resume(struct band_sums *sums, const struct band_sums *saved);

/* Works out both sides for a count; every term and the root round up. */
struct band_sides band_sums_sides(const struct band_sums *sums, const struct error_bounds *bounds,
                                  int64_t charge_nanocoulombs);

#endif
