#include "rules/empty_rule.h"

#include "charge/state_of_charge.h"
#include "port/sample.h"

#define RECOVERY_MINUTES 5
#define LOWEST_MILLICELSIUS 5000

/* A count whose lower edge is at most 15 % does not contradict empty (E4). */
#define PLAUSIBLE_PPM 150000

/* Two early ends agree when their counts differ by at most 5 points (E5). */
#define AGREEMENT_PPM 50000

void empty_rule_init(struct empty_rule *rule, const struct gauge_settings *settings)
{
    *rule = (struct empty_rule){0};
    int64_t capacity_milliamp_hours = setting_of(settings, SETTING_CAPACITY);
    rule->quiet.whole_minutes = setting_int32_of(settings, SETTING_QUIET_TIME);
    rule->empty_microvolts = setting_of(settings, SETTING_EMPTY_VOLTAGE) * 1000;
    /* derived: mAh x ppm / 1000 = uA for one hour */
    rule->small_microamps =
        capacity_milliamp_hours * setting_of(settings, SETTING_EMPTY_CURRENT) / 1000;
    rule->heavy_microamps = min_int64(capacity_milliamp_hours * 250, rule->small_microamps);
    rule->rearm_nanocoulombs =
        state_of_charge_nanocoulombs(setting_of(settings, SETTING_REARM_DISCHARGE),
                                     capacity_milliamp_hours * NANOCOULOMBS_PER_MILLIAMP_HOUR);
    rule->early_end_ppm = EMPTY_NO_EARLY_END;
    rule->armed = true;
}

static enum rule_outcome end_of_battery(struct empty_rule *rule, int32_t shown_ppm,
                                        int32_t lower_edge_ppm)
{
    rule->armed = false;
    rule->charged_nanocoulombs = 0;
    bool agrees = rule->early_end_ppm != EMPTY_NO_EARLY_END &&
                  magnitude((int64_t)rule->early_end_ppm - shown_ppm) <= AGREEMENT_PPM;
    if (lower_edge_ppm <= PLAUSIBLE_PPM || agrees) {
        rule->early_end_ppm = EMPTY_NO_EARLY_END;
        rule->empty_count++;
        return RULE_OUTCOME_SET_TO_EMPTY;
    }
    rule->early_end_ppm = shown_ppm;
    return RULE_OUTCOME_EARLY_EMPTY;
}

enum rule_outcome empty_rule_judge(struct empty_rule *rule, const struct minute_figures *minute,
                                   int32_t temperature_millicelsius, int32_t shown_ppm,
                                   int32_t lower_edge_ppm)
{
    if (rule->empty_microvolts == 0) {
        return RULE_OUTCOME_NONE;
    }
    int64_t discharge_microamps = -(int64_t)minute->mean_microamps;
    if (discharge_microamps > rule->heavy_microamps) {
        rule->light_minutes = 0;
    } else if (rule->light_minutes < RECOVERY_MINUTES) {
        rule->light_minutes++;
    }
    bool quiet = quiet_time_pass_minute(&rule->quiet);
    if (!rule->armed) {
        rule->charged_nanocoulombs = clamp(rule->charged_nanocoulombs + minute->nanocoulombs, 0,
                                           rule->rearm_nanocoulombs);
        rule->armed = rule->charged_nanocoulombs >= rule->rearm_nanocoulombs;
        return RULE_OUTCOME_NONE;
    }
    bool warm = temperature_millicelsius == TEMPERATURE_ABSENT ||
                temperature_millicelsius > LOWEST_MILLICELSIUS;
    bool at_end = !quiet && !minute->doubtful &&
                  minute->highest_microvolts <= rule->empty_microvolts &&
                  minute->lowest_microvolts > 0 && discharge_microamps > 0 &&
                  discharge_microamps <= rule->small_microamps &&
                  rule->light_minutes >= RECOVERY_MINUTES && warm;
    return at_end ? end_of_battery(rule, shown_ppm, lower_edge_ppm) : RULE_OUTCOME_NONE;
}

void empty_rule_resume(struct empty_rule *rule, bool armed, int32_t early_end_ppm)
{
    rule->armed = armed;
    rule->early_end_ppm = early_end_ppm;
    quiet_time_begin(&rule->quiet);
}
