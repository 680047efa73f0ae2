#include "band/error_band.h"

#include "charge/self_discharge.h"

#define MONTH_MILLIS_PER_MILLIONTH 2592
#define LONGEST_MILLIS (INT64_C(1) << 39)
#define LONGEST_WARM_MILLIS_Q8 (INT64_C(1) << 47)
#define COVERAGE_PER_MILLE 1155
#define RESOLUTION_PPM 1

void error_bounds_init(struct error_bounds *b, const struct gauge_settings *settings,
                       int64_t step_microamps)
{
    /* derived: 1 mAh = 3.6e9 nC, a millionth of it 3,600 */
    b->nanocoulombs_per_millionth = setting_of(settings, SETTING_CAPACITY) * 3600;
    b->offset_microamps = setting_of(settings, SETTING_OFFSET_BOUND);
    b->half_step_microamps = (step_microamps + 1) / 2;
    b->unmeasured_microamps = setting_of(settings, SETTING_UNMEASURED_BOUND);
    b->worst_microamps = setting_of(settings, SETTING_SHUNT_RATED_CURRENT) * 1000;
    b->loss_ppm = BAND_WHOLE_PPM - setting_int32_of(settings, SETTING_COULOMBIC_EFFICIENCY);
    b->gain_ppm = setting_int32_of(settings, SETTING_GAIN_BOUND);
    b->asymmetry_ppm = setting_int32_of(settings, SETTING_ASYMMETRY_BOUND);
    b->efficiency_ppm = setting_int32_of(settings, SETTING_EFFICIENCY_BOUND);
    b->self_discharge_ppm = setting_int32_of(settings, SETTING_SELF_DISCHARGE_BOUND);
    b->capacity_ppm = setting_int32_of(settings, SETTING_CAPACITY_BOUND);
}

void band_sums_add(struct band_sums *s, const struct band_stretch *stretch)
{
    s->millis = min_int64(s->millis + stretch->millis, LONGEST_MILLIS);
    s->warm_millis_q8 = min_int64(s->warm_millis_q8 + stretch->millis * stretch->warmth_q8,
                                  LONGEST_WARM_MILLIS_Q8);
    int64_t net = stretch->in_nanocoulombs - stretch->out_nanocoulombs;
    s->net_nanocoulombs = saturating_add(s->net_nanocoulombs, net);
    s->gross_nanocoulombs = saturating_add(s->gross_nanocoulombs,
                                           stretch->in_nanocoulombs + stretch->out_nanocoulombs);
    if (net > 0) {
        s->in_nanocoulombs = saturating_add(s->in_nanocoulombs, net);
    }
}

void band_sums_add_gap(struct band_sums *s, int64_t gap_millis, int64_t mean_microamps)
{
    s->gap_nanocoulombs =
        saturating_add(s->gap_nanocoulombs, saturating_product(gap_millis, mean_microamps));
}

void band_sums_add_off_time(struct band_sums *s, int64_t off_millis, int64_t mean_microamps)
{
    band_sums_add_gap(s, off_millis, mean_microamps);
    int64_t clamped = min_int64(off_millis, LONGEST_MILLIS);
    s->warm_millis_q8 =
        min_int64(s->warm_millis_q8 + clamped * WARMTH_AT_20_CELSIUS_Q8, LONGEST_WARM_MILLIS_Q8);
}

void band_sums_anchor(struct band_sums *s, int64_t residual_ppm)
{
    *s = (struct band_sums){0};
    s->residual_ppm = residual_ppm;
}

void band_sums_widen(struct band_sums *s, int64_t ppm)
{
    s->residual_ppm = min_int64(s->residual_ppm + ppm, BAND_WHOLE_PPM);
}

void band_sums_capacity_changed(struct band_sums *s, const struct error_bounds *b,
                                int64_t old_milliamp_hours, int64_t new_milliamp_hours)
{
    if (old_milliamp_hours <= 0 || new_milliamp_hours == old_milliamp_hours) {
        return;
    }
    /* What was counted since the anchor is another part of the new capacity than of the old one. */
    int64_t moved = magnitude(s->net_nanocoulombs);
    band_sums_widen(s, parts_ceiling(moved, min_int64(old_milliamp_hours, new_milliamp_hours)) -
                           parts_floor(moved, max_int64(old_milliamp_hours, new_milliamp_hours)));
    if (new_milliamp_hours < old_milliamp_hours) {
        return;
    }
    /* The squares count with their coverage factor, the unmeasured charge whole. */
    int64_t squared =
        (b->offset_microamps + b->half_step_microamps) * COVERAGE_PER_MILLE / 1000 + 1;
    int64_t standing = saturating_product(squared + b->unmeasured_microamps, s->millis);
    int64_t grown_standing = grown(standing, old_milliamp_hours, new_milliamp_hours);
    int64_t grown_gap = grown(s->gap_nanocoulombs, old_milliamp_hours, new_milliamp_hours);
    s->gap_nanocoulombs = saturating_add(grown_gap, grown_standing - standing);
    int64_t net = grown(moved, old_milliamp_hours, new_milliamp_hours);
    s->net_nanocoulombs = s->net_nanocoulombs < 0 ? -net : net;
    s->gross_nanocoulombs = grown(s->gross_nanocoulombs, old_milliamp_hours, new_milliamp_hours);
    s->in_nanocoulombs = grown(s->in_nanocoulombs, old_milliamp_hours, new_milliamp_hours);
}

void band_sums_resume(struct band_sums *s, const struct band_sums *saved)
{
    s->residual_ppm = clamp(saved->residual_ppm, 0, BAND_WHOLE_PPM);
    s->millis = clamp(saved->millis, 0, LONGEST_MILLIS);
    s->net_nanocoulombs = clamp(saved->net_nanocoulombs, -FIXED_LARGEST_SUM, FIXED_LARGEST_SUM);
    s->gross_nanocoulombs = clamp(saved->gross_nanocoulombs, 0, FIXED_LARGEST_SUM);
    s->in_nanocoulombs = clamp(saved->in_nanocoulombs, 0, FIXED_LARGEST_SUM);
    s->gap_nanocoulombs = clamp(saved->gap_nanocoulombs, 0, FIXED_LARGEST_SUM);
    s->warm_millis_q8 = clamp(saved->warm_millis_q8, 0, LONGEST_WARM_MILLIS_Q8);
}

/* A charge, 0 or more, in ppm of the capacity, rounded up; at most 2^62 / 360,000 = 2^44. */
static int64_t parts_of(const struct error_bounds *b, int64_t nanocoulombs)
{
    return (nanocoulombs + b->nanocoulombs_per_millionth - 1) / b->nanocoulombs_per_millionth;
}

static int64_t flow_term(const struct band_sums *s, const struct error_bounds *b,
                         int64_t microamps)
{
    return parts_limited(parts_of(b, saturating_product(microamps, s->millis)));
}

/* How far the count moved since the anchor, without its limits; 2 ppm make up for rounding. */
static int64_t change_parts(const struct band_sums *s, const struct error_bounds *b,
                            int64_t in_parts)
{
    int64_t net = s->net_nanocoulombs / b->nanocoulombs_per_millionth;
    return magnitude(net - parts_ratio(in_parts, b->loss_ppm)) + 2;
}

static int64_t self_discharge_term(const struct band_sums *s, const struct error_bounds *b)
{
    int64_t months_ppm = ((s->warm_millis_q8 >> 8) + MONTH_MILLIS_PER_MILLIONTH - 1) /
                         MONTH_MILLIS_PER_MILLIONTH;
    return parts_limited(parts_ratio(months_ppm, b->self_discharge_ppm));
}

struct band_sides band_sums_sides(const struct band_sums *s, const struct error_bounds *b,
                                  int64_t charge_nanocoulombs)
{
    if (s->residual_ppm >= BAND_WHOLE_PPM) {
        return (struct band_sides){BAND_WHOLE_PPM, BAND_WHOLE_PPM};
    }
    int64_t in = parts_of(b, s->in_nanocoulombs);
    int64_t gross = parts_of(b, s->gross_nanocoulombs);
    int64_t change = change_parts(s, b, in);
    int64_t missing = BAND_WHOLE_PPM - charge_nanocoulombs / b->nanocoulombs_per_millionth;
    /* Exact after a full anchor and on the way up from an empty one, never too small. */
    int64_t moved = max_int64(change, min_int64(missing, gross));
    int64_t squares = parts_square(s->residual_ppm) +
                      parts_square(flow_term(s, b, b->offset_microamps)) +
                      parts_square(flow_term(s, b, b->half_step_microamps)) +
                      parts_square(parts_ratio(change, b->gain_ppm)) +
                      parts_square(parts_ratio(gross, b->asymmetry_ppm)) +
                      parts_square(parts_ratio(in, b->efficiency_ppm)) +
                      parts_square(self_discharge_term(s, b)) +
                      parts_square(parts_ratio(moved, b->capacity_ppm));
    int64_t symmetric = square_root_ceiling(squares) * COVERAGE_PER_MILLE;
    int64_t both = (symmetric + 999) / 1000 + RESOLUTION_PPM +
                   parts_limited(parts_of(b, s->gap_nanocoulombs));
    return (struct band_sides){
        (int32_t)parts_limited(both + flow_term(s, b, b->unmeasured_microamps)),
        (int32_t)parts_limited(both),
    };
}
