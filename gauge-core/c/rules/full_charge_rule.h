/*
 * Proves full (the F rules): the battery's voltage at the charger's regulation level while the
 * current has fallen into the taper range, for the hold time. Judged once a whole minute.
 */
#ifndef GAUGE_RULES_FULL_CHARGE_RULE_H
#define GAUGE_RULES_FULL_CHARGE_RULE_H

#include "rules/full_charge_paths.h"

/* Which states, transitions (bit from x 8 + to) and reasons a run has visited (F17). */
struct rule_coverage {
    uint64_t transition_bits;
    uint32_t state_bits;
    uint32_t reason_bits;
};

struct full_charge_rule {
    struct full_charge_limits limits;
    /* State. */
    int64_t discharged_nanocoulombs;
    int64_t threshold_microvolts;
    struct rule_coverage coverage;
    struct taper_path taper;
    struct plateau_path plateau;
    struct float_path floating;
    struct flow_watch flow;
    struct quiet_time quiet;
    enum rule_state state;
    enum rule_reason reason;
    int32_t full_count;
    int32_t residual_ppm;
    bool at_float_voltage;
    /* A charger's voltage stands on the wires and nothing flows. */
    bool charger_stands_alone;
};

void full_charge_rule_init(struct full_charge_rule *rule, const struct gauge_settings *settings);

/*
 * Judges one whole minute. The upper edge is 1,000,000 while nothing is known, so that a start
 * without knowledge never locks the rule.
 */
enum rule_outcome full_charge_rule_judge(struct full_charge_rule *rule,
                                         const struct minute_figures *minute,
                                         int32_t temperature_millicelsius, int32_t upper_edge_ppm,
                                         bool at_limit);

/* Somebody declared full, or another state of charge (G15). */
void full_charge_rule_declare_full(struct full_charge_rule *rule);
void full_charge_rule_declare_not_full(struct full_charge_rule *rule);

/* What was held no longer counts (F15). */
void full_charge_rule_samples_missing(struct full_charge_rule *rule);

/* Takes over where a rule before this one stood, after a restart. */
void full_charge_rule_resume(struct full_charge_rule *rule, bool armed,
                             int64_t discharged_nanocoulombs, int32_t full_count);

/* Another battery: the flow that was seen went into the old one. */
void full_charge_rule_new_battery(struct full_charge_rule *rule);

/* Full was proven or declared and a charger keeps it so; of the last whole minute. */
static inline bool full_charge_rule_is_kept_full(const struct full_charge_rule *rule)
{
    return rule->state == RULE_STATE_NOT_ARMED && rule->at_float_voltage;
}

static inline bool full_charge_rule_is_armed(const struct full_charge_rule *rule)
{
    return rule->state != RULE_STATE_NOT_ARMED;
}

#endif
