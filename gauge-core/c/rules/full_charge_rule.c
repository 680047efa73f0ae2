#include "rules/full_charge_rule.h"

#include "port/sample.h"

#define LONGER_HOLD_TIMES 4
#define TRANSITION_STRIDE 8u

/* A count whose upper edge reaches 95 % does not contradict full (F9). */
#define PLAUSIBLE_PPM 950000

void full_charge_rule_init(struct full_charge_rule *rule, const struct gauge_settings *settings)
{
    *rule = (struct full_charge_rule){0};
    full_charge_limits_init(&rule->limits, settings);
    rule->quiet.whole_minutes = setting_int32_of(settings, SETTING_QUIET_TIME);
    rule->threshold_microvolts =
        full_charge_threshold_microvolts(&rule->limits, TEMPERATURE_ABSENT);
    rule->state = RULE_STATE_WAITING;
    rule->reason =
        rule->limits.switched_off ? RULE_REASON_SWITCHED_OFF : RULE_REASON_NO_MINUTE_YET;
}

static void move(struct full_charge_rule *rule, enum rule_state to, enum rule_reason why)
{
    rule->coverage.state_bits |= UINT32_C(1) << (unsigned)to;
    if (rule->state != to) {
        unsigned bit = (unsigned)rule->state * TRANSITION_STRIDE + (unsigned)to;
        rule->coverage.transition_bits |= UINT64_C(1) << bit;
    }
    rule->coverage.reason_bits |= UINT32_C(1) << (unsigned)why;
    rule->state = to;
    rule->reason = why;
}

static void let_go(struct full_charge_rule *rule)
{
    taper_path_reset(&rule->taper);
    plateau_path_reset(&rule->plateau);
    hold_timer_reset(&rule->floating.hold);
}

static void restart(struct full_charge_rule *rule, enum rule_reason why)
{
    let_go(rule);
    move(rule, RULE_STATE_WAITING, why);
}

static void disarm(struct full_charge_rule *rule, enum rule_reason why)
{
    let_go(rule);
    move(rule, RULE_STATE_NOT_ARMED, why);
    rule->discharged_nanocoulombs = 0;
}

static void watch_flow(struct full_charge_rule *rule, const struct minute_figures *minute,
                       int32_t temperature_millicelsius)
{
    const struct full_charge_limits *limits = &rule->limits;
    if (minute->doubtful) {
        flow_watch_add_doubtful_minute(&rule->flow);
        rule->charger_stands_alone = false;
        return;
    }
    bool voltage_up = minute->lowest_microvolts >=
                      full_charge_charging_microvolts(limits, temperature_millicelsius);
    flow_watch_add_minute(&rule->flow, limits, minute->mean_microamps, voltage_up);
    rule->charger_stands_alone =
        voltage_up && magnitude((int64_t)minute->mean_microamps) < limits->no_flow_microamps;
}

static void explain(struct full_charge_rule *rule, enum rule_reason obstacle, bool plateau_runs,
                    bool float_runs)
{
    int32_t held_minutes = rule->taper.hold.held_minutes;
    if (obstacle == RULE_REASON_HOLD_RUNNING) {
        bool longer = held_minutes >= rule->limits.hold_minutes;
        move(rule, RULE_STATE_HOLDING, longer ? RULE_REASON_LONGER_HOLD_RUNNING : obstacle);
    } else if (plateau_runs) {
        move(rule, RULE_STATE_HOLDING, RULE_REASON_PLATEAU_RUNNING);
    } else if (obstacle == RULE_REASON_VOLTAGE_NOT_FLAT) {
        move(rule, RULE_STATE_WAITING, obstacle);
    } else if (held_minutes > 0) {
        move(rule, RULE_STATE_PAUSED, obstacle);
    } else if (float_runs) {
        move(rule, RULE_STATE_HOLDING, RULE_REASON_FLOAT_RUNNING);
    } else {
        move(rule, RULE_STATE_WAITING, obstacle);
    }
}

/* Answers HOLD_RUNNING while nothing is proven, else the proof. */
static enum rule_reason judge_paths(struct full_charge_rule *rule,
                                    const struct minute_figures *minute,
                                    int32_t temperature_millicelsius, bool plausible, bool at_limit)
{
    const struct full_charge_limits *limits = &rule->limits;
    enum rule_reason obstacle = taper_path_judge(&rule->taper, limits, minute,
                                                 rule->threshold_microvolts, &rule->flow);
    bool plateau_runs = plateau_path_judge(&rule->plateau, limits, minute, obstacle, at_limit);
    bool float_runs = float_path_judge(&rule->floating, limits, minute, temperature_millicelsius,
                                       &rule->flow);
    int32_t needed_minutes =
        plausible ? limits->hold_minutes : LONGER_HOLD_TIMES * limits->hold_minutes;
    if (obstacle == RULE_REASON_HOLD_RUNNING && rule->taper.hold.held_minutes >= needed_minutes) {
        return plausible ? RULE_REASON_PROVEN_BY_TAPER : RULE_REASON_PROVEN_LATE;
    }
    if (plateau_runs && plateau_path_is_proven(&rule->plateau, limits)) {
        return RULE_REASON_PROVEN_BY_PLATEAU;
    }
    /* No current at float voltage is what an open isolator shows too (F11). */
    if (float_runs && plausible && float_path_is_proven(&rule->floating, limits)) {
        return RULE_REASON_PROVEN_BY_FLOAT;
    }
    explain(rule, obstacle, plateau_runs, float_runs);
    return RULE_REASON_HOLD_RUNNING;
}

static enum rule_outcome prove(struct full_charge_rule *rule, enum rule_reason proof)
{
    rule->full_count += rule->full_count < INT32_MAX ? 1 : 0;
    rule->residual_ppm = proof == RULE_REASON_PROVEN_BY_TAPER ? rule->limits.taper_residual_ppm
                                                              : rule->limits.other_residual_ppm;
    disarm(rule, proof);
    return RULE_OUTCOME_SET_TO_FULL;
}

/* Armed by what went out through the shunt, or by what the band says was lost beside it (F13). */
static enum rule_outcome judge_rearm(struct full_charge_rule *rule,
                                     const struct minute_figures *minute, int32_t upper_edge_ppm)
{
    int64_t rearm_nanocoulombs = rule->limits.rearm_nanocoulombs;
    rule->discharged_nanocoulombs =
        clamp(rule->discharged_nanocoulombs - minute->nanocoulombs, 0, rearm_nanocoulombs);
    bool cannot_be_full = upper_edge_ppm <= rule->limits.rearm_edge_ppm;
    if (rule->discharged_nanocoulombs < rearm_nanocoulombs && !cannot_be_full) {
        move(rule, rule->state, rule->reason);
        return RULE_OUTCOME_NONE;
    }
    restart(rule, RULE_REASON_ARMED_BY_DISCHARGE);
    return RULE_OUTCOME_ARMED;
}

enum rule_outcome full_charge_rule_judge(struct full_charge_rule *rule,
                                         const struct minute_figures *minute,
                                         int32_t temperature_millicelsius, int32_t upper_edge_ppm,
                                         bool at_limit)
{
    const struct full_charge_limits *limits = &rule->limits;
    if (limits->switched_off) {
        return RULE_OUTCOME_NONE;
    }
    rule->at_float_voltage =
        limits->float_minutes > 0 &&
        minute->lowest_microvolts >= full_charge_float_microvolts(limits, temperature_millicelsius);
    rule->threshold_microvolts = full_charge_threshold_microvolts(limits, temperature_millicelsius);
    watch_flow(rule, minute, temperature_millicelsius);
    bool quiet = quiet_time_pass_minute(&rule->quiet);
    if (rule->state == RULE_STATE_NOT_ARMED) {
        return judge_rearm(rule, minute, upper_edge_ppm);
    }
    if (quiet) {
        restart(rule, RULE_REASON_QUIET_TIME);
        return RULE_OUTCOME_NONE;
    }
    bool plausible = upper_edge_ppm >= PLAUSIBLE_PPM;
    enum rule_reason proof =
        judge_paths(rule, minute, temperature_millicelsius, plausible, at_limit);
    return proof == RULE_REASON_HOLD_RUNNING ? RULE_OUTCOME_NONE : prove(rule, proof);
}

void full_charge_rule_declare_full(struct full_charge_rule *rule)
{
    if (!rule->limits.switched_off) {
        disarm(rule, RULE_REASON_DECLARED_FULL);
    }
}

void full_charge_rule_declare_not_full(struct full_charge_rule *rule)
{
    if (!rule->limits.switched_off) {
        restart(rule, RULE_REASON_DECLARED_NOT_FULL);
    }
}

void full_charge_rule_samples_missing(struct full_charge_rule *rule)
{
    flow_watch_forget(&rule->flow);
    if (!rule->limits.switched_off && rule->state != RULE_STATE_NOT_ARMED) {
        restart(rule, RULE_REASON_SAMPLES_MISSING);
    }
}

void full_charge_rule_resume(struct full_charge_rule *rule, bool armed,
                             int64_t discharged_nanocoulombs, int32_t full_count)
{
    rule->full_count = full_count;
    if (rule->limits.switched_off) {
        return;
    }
    quiet_time_begin(&rule->quiet);
    if (armed) {
        restart(rule, RULE_REASON_QUIET_TIME);
    } else {
        disarm(rule, RULE_REASON_QUIET_TIME);
        rule->discharged_nanocoulombs =
            clamp(discharged_nanocoulombs, 0, rule->limits.rearm_nanocoulombs);
    }
}

void full_charge_rule_new_battery(struct full_charge_rule *rule)
{
    flow_watch_forget(&rule->flow);
    rule->flow.stopped = false;
    full_charge_rule_resume(rule, true, 0, 0);
}
