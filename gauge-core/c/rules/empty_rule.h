/*
 * Proves empty (the E rules): a voltage at its lower end at a small current, not cold, and not
 * shortly after a heavy load, whose sag looks the same.
 */
#ifndef GAUGE_RULES_EMPTY_RULE_H
#define GAUGE_RULES_EMPTY_RULE_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "rules/rule_parts.h"
#include "settings/gauge_settings.h"

#define EMPTY_NO_EARLY_END (-1)

struct empty_rule {
    /* Parameters. */
    int64_t empty_microvolts;
    int64_t small_microamps;
    int64_t heavy_microamps;
    int64_t rearm_nanocoulombs;
    /* State. */
    int64_t charged_nanocoulombs;
    struct quiet_time quiet;
    /* Starts at 0: what was drawn before the start is not known (E3). */
    int32_t light_minutes;
    /* The count at the last early end, or EMPTY_NO_EARLY_END. */
    int32_t early_end_ppm;
    int32_t empty_count;
    bool armed;
};

void empty_rule_init(struct empty_rule *rule, const struct gauge_settings *settings);

/* Judges one whole minute; an absent temperature is taken as warm. */
enum rule_outcome empty_rule_judge(struct empty_rule *rule, const struct minute_figures *minute,
                                   int32_t temperature_millicelsius, int32_t shown_ppm,
                                   int32_t lower_edge_ppm);

/* Takes over where a rule before this one stood; begins the quiet time. */
void empty_rule_resume(struct empty_rule *rule, bool armed, int32_t early_end_ppm);

#endif
