#include "band/state_band.h"

/* A weaker fact than what the last update still left is not taken: knowledge would be lost. */
static void state_fact(struct one_sided_fact *fact, int64_t distance_ppm)
{
    if (fact->set && fact->reach_ppm <= distance_ppm) {
        return;
    }
    fact->set = true;
    fact->distance_ppm = distance_ppm;
    fact->reach_ppm = distance_ppm;
    band_sums_anchor(&fact->growth, 0);
}

void state_band_init(struct state_band *band, const struct gauge_settings *settings,
                     int64_t step_microamps)
{
    *band = (struct state_band){0};
    error_bounds_init(&band->bounds, settings, step_microamps);
    state_band_forget(band);
    band->low_side_ppm = BAND_WHOLE_PPM;
    band->high_side_ppm = BAND_WHOLE_PPM;
    band->upper_edge_ppm = BAND_WHOLE_PPM;
}

void state_band_add(struct state_band *band, const struct band_stretch *stretch)
{
    band_sums_add(&band->sums, stretch);
    if (band->at_least.set) {
        band_sums_add(&band->at_least.growth, stretch);
    }
    if (band->at_most.set) {
        band_sums_add(&band->at_most.growth, stretch);
    }
}

void state_band_add_unmeasured(struct state_band *band, int64_t gap_millis)
{
    /* The shunt's rated current may have flowed on top of what was counted. */
    int64_t worst = band->bounds.worst_microamps;
    band_sums_add_gap(&band->sums, gap_millis, worst);
    if (band->at_least.set) {
        band_sums_add_gap(&band->at_least.growth, gap_millis, worst);
    }
    if (band->at_most.set) {
        band_sums_add_gap(&band->at_most.growth, gap_millis, worst);
    }
}

static void drop_facts(struct state_band *band)
{
    band->at_least.set = false;
    band->at_most.set = false;
}

void state_band_add_off_time(struct state_band *band, int64_t off_millis, int64_t mean_microamps)
{
    band_sums_add_off_time(&band->sums, off_millis, mean_microamps);
    drop_facts(band);
}

void state_band_anchor(struct state_band *band, int64_t residual_ppm)
{
    band_sums_anchor(&band->sums, residual_ppm);
    drop_facts(band);
}

void state_band_forget(struct state_band *band)
{
    state_band_anchor(band, BAND_WHOLE_PPM);
}

void state_band_clip(struct state_band *band, int32_t shown_ppm, int32_t lowest_ppm,
                     int32_t highest_ppm)
{
    if (lowest_ppm > 0) {
        state_fact(&band->at_least, max_int32(shown_ppm - lowest_ppm, 0));
    }
    if (highest_ppm < BAND_WHOLE_PPM) {
        state_fact(&band->at_most, max_int32(highest_ppm - shown_ppm, 0));
    }
}

void state_band_update(struct state_band *band, int32_t shown_ppm, int64_t charge_nanocoulombs)
{
    if (band->sums.residual_ppm >= BAND_WHOLE_PPM) {
        /* Facts do not help: the count that they would clip the band of says nothing. */
        band->low_side_ppm = BAND_WHOLE_PPM;
        band->high_side_ppm = BAND_WHOLE_PPM;
        band->lower_edge_ppm = 0;
        band->upper_edge_ppm = BAND_WHOLE_PPM;
        return;
    }
    struct band_sides sides = band_sums_sides(&band->sums, &band->bounds, charge_nanocoulombs);
    struct one_sided_fact *least = &band->at_least;
    if (least->set) {
        struct band_sides grown_sides =
            band_sums_sides(&least->growth, &band->bounds, charge_nanocoulombs);
        least->reach_ppm = least->distance_ppm + grown_sides.low_ppm;
        sides.low_ppm = (int32_t)min_int64(sides.low_ppm, least->reach_ppm);
    }
    struct one_sided_fact *most = &band->at_most;
    if (most->set) {
        struct band_sides grown_sides =
            band_sums_sides(&most->growth, &band->bounds, charge_nanocoulombs);
        most->reach_ppm = most->distance_ppm + grown_sides.high_ppm;
        sides.high_ppm = (int32_t)min_int64(sides.high_ppm, most->reach_ppm);
    }
    band->low_side_ppm = sides.low_ppm;
    band->high_side_ppm = sides.high_ppm;
    band->lower_edge_ppm = (int32_t)clamp(shown_ppm - sides.low_ppm, 0, BAND_WHOLE_PPM);
    band->upper_edge_ppm = (int32_t)clamp(shown_ppm + sides.high_ppm, 0, BAND_WHOLE_PPM);
}
