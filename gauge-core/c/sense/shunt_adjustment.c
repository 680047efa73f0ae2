#include "sense/shunt_adjustment.h"

#include "fixed/fixed_math.h"

#define STEADY_DIVISOR 50
#define LEAST_SPAN_DIVISOR 10

void shunt_adjustment_init(struct shunt_adjustment *a, const struct gauge_settings *settings)
{
    *a = (struct shunt_adjustment){0};
    /* derived: mA x 1000 = uA; ppm of it */
    a->rated_microamps = setting_of(settings, SETTING_SHUNT_RATED_CURRENT) * 1000;
    a->zero_limit_microamps =
        a->rated_microamps / 1000 * setting_of(settings, SETTING_ZERO_LIMIT) / 1000;
}

static int64_t spread_of(const struct shown_minute *minute)
{
    return (int64_t)minute->highest_microamps - minute->lowest_microamps;
}

enum command_outcome shunt_adjustment_zero(struct shunt_adjustment *a,
                                           const struct shown_minute *minute,
                                           const struct current_sense *sense)
{
    if (magnitude((int64_t)minute->mean_microamps) > a->zero_limit_microamps) {
        return OUTCOME_REFUSED_NOT_ZERO;
    }
    if (spread_of(minute) > 2 * a->zero_limit_microamps) {
        return OUTCOME_REFUSED_UNSTABLE;
    }
    /* The sum stays within the limit: several small steps must not take a load for zero. */
    int64_t total =
        (int64_t)a->zero_counts_q8 + current_sense_counts_q8(sense, minute->mean_microamps);
    int32_t limit = min_int32(current_sense_counts_q8(sense, (int32_t)a->zero_limit_microamps),
                              SHUNT_LARGEST_ZERO_COUNTS_Q8);
    if (magnitude(total) > limit) {
        return OUTCOME_REFUSED_NOT_ZERO;
    }
    a->zero_counts_q8 = (int32_t)total;
    a->point_taken = false;
    return OUTCOME_DONE;
}

enum command_outcome shunt_adjustment_span(struct shunt_adjustment *a,
                                           const struct shown_minute *minute,
                                           int64_t reference_microamps)
{
    if (reference_microamps > INT32_MAX || reference_microamps < -INT32_MAX) {
        return OUTCOME_REFUSED_OUT_OF_RANGE;
    }
    if (spread_of(minute) > a->rated_microamps / STEADY_DIVISOR) {
        return OUTCOME_REFUSED_UNSTABLE;
    }
    if (!a->point_taken) {
        a->point_taken = true;
        a->point_shown_microamps = minute->mean_microamps;
        a->point_reference_microamps = reference_microamps;
        return OUTCOME_FIRST_POINT_TAKEN;
    }
    a->point_taken = false;
    int64_t shown_step = minute->mean_microamps - a->point_shown_microamps;
    int64_t reference_step = reference_microamps - a->point_reference_microamps;
    if (magnitude(shown_step) < a->rated_microamps / LEAST_SPAN_DIVISOR) {
        return OUTCOME_REFUSED_POINTS_TOO_CLOSE;
    }
    int64_t difference = reference_step - shown_step;
    int64_t gain_ppm = divide_half_away_from_zero(
        (shown_step < 0 ? -difference : difference) * 1000000, magnitude(shown_step));
    if (magnitude(gain_ppm) > 2 * SHUNT_LARGEST_GAIN_PPM) {
        return OUTCOME_REFUSED_TOO_LARGE;
    }
    /* Gains multiply: (1 + g)(1 + h) - 1. */
    int64_t total = a->gain_ppm + gain_ppm + a->gain_ppm * gain_ppm / 1000000;
    if (magnitude(total) > SHUNT_LARGEST_GAIN_PPM) {
        return OUTCOME_REFUSED_TOO_LARGE;
    }
    a->gain_ppm = (int32_t)total;
    return OUTCOME_DONE;
}

void shunt_adjustment_resume(struct shunt_adjustment *a, int32_t zero_counts_q8, int32_t gain_ppm)
{
    a->zero_counts_q8 = zero_counts_q8;
    a->gain_ppm = (int32_t)clamp(gain_ppm, -SHUNT_LARGEST_GAIN_PPM, SHUNT_LARGEST_GAIN_PPM);
}
