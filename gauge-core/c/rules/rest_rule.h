/*
 * Corrects the count by the open-circuit voltage after a long rest (the R rules), once a rest. On
 * a flat curve the correction is refused by arithmetic, not by a special case.
 */
#ifndef GAUGE_RULES_REST_RULE_H
#define GAUGE_RULES_REST_RULE_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "rules/full_charge_limits.h"
#include "rules/rule_parts.h"
#include "settings/gauge_settings.h"

#define REST_POINT_COUNT 7

struct rest_rule {
    /* Parameters. */
    int64_t rest_microamps;
    int64_t bound_microvolts;
    /* The rest table's voltages, rising (R7). */
    int64_t point_microvolts[REST_POINT_COUNT];
    int32_t rest_minutes;
    /* State. */
    struct quiet_time quiet;
    int32_t rested_minutes;
    int32_t uncharged_minutes;
    bool used_this_rest;
    /* The last answer: where the count shall go, how wide the band is then, what it bounds. */
    int32_t target_ppm;
    int32_t lowest_ppm;
    int32_t highest_ppm;
    int64_t residual_ppm;
};

void rest_rule_init(struct rest_rule *rule, const struct gauge_settings *settings);

/* Judges one whole minute; limits are those of the full-charge rule, half width the wider side. */
enum rule_outcome rest_rule_judge(struct rest_rule *rule, const struct full_charge_limits *limits,
                                  const struct minute_figures *minute,
                                  int32_t temperature_millicelsius, int32_t shown_ppm,
                                  int32_t half_width_ppm);

/* Whether the battery rested is not known. */
void rest_rule_samples_missing(struct rest_rule *rule);

#endif
