#include "rules/rest_rule.h"

#include "band/anchor_residual.h"
#include "port/sample.h"

#define MINUTES_PER_HOUR 60

/* Surface charge: no charging in the last twelve hours (R3). */
#define AFTER_CHARGE_MINUTES (12 * MINUTES_PER_HOUR)
#define LOWEST_MILLICELSIUS 5000

static const int32_t POINTS_PPM[REST_POINT_COUNT] = {0,      100000, 250000, 500000,
                                                     750000, 900000, 1000000};

void rest_rule_init(struct rest_rule *rule, const struct gauge_settings *settings)
{
    *rule = (struct rest_rule){0};
    rule->quiet.whole_minutes = setting_int32_of(settings, SETTING_QUIET_TIME);
    rule->rest_minutes = setting_int32_of(settings, SETTING_REST_TIME) * MINUTES_PER_HOUR;
    /* derived: 0.1 % of the capacity in one hour, at least twice the offset bound */
    rule->rest_microamps = max_int64(setting_of(settings, SETTING_CAPACITY),
                                     2 * setting_of(settings, SETTING_OFFSET_BOUND));
    rule->bound_microvolts = setting_of(settings, SETTING_REST_VOLTAGE_BOUND) * 1000;
    for (int i = 0; i < REST_POINT_COUNT; i++) {
        /* The seven points stand together in the table. */
        rule->point_microvolts[i] = settings->values[SETTING_REST_VOLTAGE_0 + i] * 1000;
    }
}

/* State of charge at a rested voltage: straight lines, rounded down, 0 and full beyond the ends. */
static int32_t table_ppm(const struct rest_rule *rule, int64_t microvolts)
{
    if (microvolts <= rule->point_microvolts[0]) {
        return 0;
    }
    for (int i = 1; i < REST_POINT_COUNT; i++) {
        if (microvolts < rule->point_microvolts[i]) {
            int64_t low = rule->point_microvolts[i - 1];
            int64_t width = (int64_t)POINTS_PPM[i] - POINTS_PPM[i - 1];
            return (int32_t)(POINTS_PPM[i - 1] +
                             (microvolts - low) * width / (rule->point_microvolts[i] - low));
        }
    }
    return POINTS_PPM[REST_POINT_COUNT - 1];
}

/*
 * No rested battery stands above the end of the table and its bound. Under that a charger that
 * floats is known by its voltage; in the warmth it floats lower.
 */
static bool is_rested_voltage(const struct rest_rule *rule, const struct full_charge_limits *limits,
                              int64_t microvolts, int32_t temperature_millicelsius)
{
    int64_t highest = rule->point_microvolts[REST_POINT_COUNT - 1];
    if (microvolts > highest + rule->bound_microvolts) {
        return false;
    }
    return limits->float_at_25_microvolts == 0 ||
           microvolts <
               limits->float_at_25_microvolts +
                   min_int64(0, full_charge_compensation_microvolts(limits,
                                                                    temperature_millicelsius));
}

/* Beyond the table's ends the voltage says no more than at them (R4). */
static enum rule_outcome compare(struct rest_rule *rule, int64_t mean_microvolts, int32_t shown_ppm,
                                 int32_t half_width_ppm)
{
    int64_t microvolts = clamp(mean_microvolts, rule->point_microvolts[0],
                               rule->point_microvolts[REST_POINT_COUNT - 1]);
    int32_t at_voltage_ppm = table_ppm(rule, microvolts);
    rule->lowest_ppm = table_ppm(rule, microvolts - rule->bound_microvolts);
    rule->highest_ppm = table_ppm(rule, microvolts + rule->bound_microvolts);
    int32_t anchor_half_width_ppm =
        max_int32(at_voltage_ppm - rule->lowest_ppm, rule->highest_ppm - at_voltage_ppm);
    if (anchor_half_width_ppm >= half_width_ppm) {
        return RULE_OUTCOME_BAND_CLIPPED;
    }
    int64_t weight_q16 = anchor_weight_q16(half_width_ppm, anchor_half_width_ppm);
    rule->target_ppm =
        (int32_t)(shown_ppm + shift_right_floor((at_voltage_ppm - shown_ppm) * weight_q16, 16));
    rule->residual_ppm = anchor_combined_ppm(half_width_ppm, anchor_half_width_ppm);
    return RULE_OUTCOME_CORRECTED_BY_REST;
}

enum rule_outcome rest_rule_judge(struct rest_rule *rule, const struct full_charge_limits *limits,
                                  const struct minute_figures *minute,
                                  int32_t temperature_millicelsius, int32_t shown_ppm,
                                  int32_t half_width_ppm)
{
    if (rule->rest_minutes == 0) {
        return RULE_OUTCOME_NONE;
    }
    bool quiet = quiet_time_pass_minute(&rule->quiet);
    rule->uncharged_minutes = minute->mean_microamps > rule->rest_microamps
                                  ? 0
                                  : min_int32(rule->uncharged_minutes + 1, AFTER_CHARGE_MINUTES);
    bool still = !minute->doubtful && minute->highest_microamps <= rule->rest_microamps &&
                 minute->lowest_microamps >= -rule->rest_microamps;
    if (!still || minute->lowest_microvolts == 0) {
        rule->rested_minutes = 0;
        rule->used_this_rest = false;
        return RULE_OUTCOME_NONE;
    }
    rule->rested_minutes = min_int32(rule->rested_minutes + 1, rule->rest_minutes);
    bool cold = temperature_millicelsius != TEMPERATURE_ABSENT &&
                temperature_millicelsius < LOWEST_MILLICELSIUS;
    if (quiet || rule->used_this_rest || rule->rested_minutes < rule->rest_minutes ||
        rule->uncharged_minutes < AFTER_CHARGE_MINUTES || cold ||
        !is_rested_voltage(rule, limits, minute->mean_microvolts, temperature_millicelsius)) {
        return RULE_OUTCOME_NONE;
    }
    rule->used_this_rest = true;
    return compare(rule, minute->mean_microvolts, shown_ppm, half_width_ppm);
}

void rest_rule_samples_missing(struct rest_rule *rule)
{
    rule->rested_minutes = 0;
    rule->uncharged_minutes = 0;
    rule->used_this_rest = false;
}
