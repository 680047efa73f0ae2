#include "rules/full_charge_paths.h"

/* The taper range reaches a quarter of the taper below zero: a full battery may float. */
#define TAPER_FLOOR_DIVISOR 4
#define PLATEAU_TAPER_TIMES 4
#define STEADY_PERCENT 5

static enum rule_reason taper_obstacle(const struct full_charge_limits *limits,
                                       const struct minute_figures *minute,
                                       int64_t threshold_microvolts, const struct flow_watch *flow)
{
    if (minute->doubtful) {
        return RULE_REASON_READING_DOUBTFUL;
    }
    if (minute->lowest_microvolts < threshold_microvolts) {
        return RULE_REASON_VOLTAGE_UNDER_THRESHOLD;
    }
    if (flow->stopped) {
        return RULE_REASON_FLOW_STOPPED;
    }
    if (!flow->flow_seen) {
        return RULE_REASON_NO_FLOW;
    }
    if (minute->mean_microamps > limits->taper_microamps) {
        return RULE_REASON_CURRENT_ABOVE_TAPER;
    }
    if (minute->mean_microamps < -limits->taper_microamps / TAPER_FLOOR_DIVISOR) {
        return RULE_REASON_CURRENT_BELOW_TAPER;
    }
    return RULE_REASON_HOLD_RUNNING;
}

/* Whether the mean voltages of the minutes that were held lie within the flatness (F5). */
static bool is_flat(struct taper_path *path, const struct full_charge_limits *limits,
                    const struct minute_figures *minute)
{
    if (limits->flatness_microvolts == 0) {
        return true;
    }
    if (path->hold.held_minutes == 0) {
        path->flatness.minutes = 0;
    }
    int32_t before = path->flatness.minutes;
    steady_watch_add_minute(&path->flatness, minute->mean_microvolts, limits->flatness_microvolts);
    return path->flatness.minutes == before + 1;
}

enum rule_reason taper_path_judge(struct taper_path *path, const struct full_charge_limits *limits,
                                  const struct minute_figures *minute, int64_t threshold_microvolts,
                                  const struct flow_watch *flow)
{
    enum rule_reason obstacle = taper_obstacle(limits, minute, threshold_microvolts, flow);
    if (obstacle == RULE_REASON_HOLD_RUNNING && !is_flat(path, limits, minute)) {
        hold_timer_reset(&path->hold);
        obstacle = RULE_REASON_VOLTAGE_NOT_FLAT;
    }
    if (obstacle == RULE_REASON_HOLD_RUNNING) {
        hold_timer_inside(&path->hold);
    } else {
        hold_timer_outside(&path->hold);
    }
    return obstacle;
}

void taper_path_reset(struct taper_path *path)
{
    hold_timer_reset(&path->hold);
    path->flatness.minutes = 0;
}

bool plateau_path_judge(struct plateau_path *path, const struct full_charge_limits *limits,
                        const struct minute_figures *minute, enum rule_reason obstacle,
                        bool at_limit)
{
    int64_t mean = minute->mean_microamps;
    bool runs = limits->plateau_minutes > 0 && at_limit &&
                obstacle == RULE_REASON_CURRENT_ABOVE_TAPER &&
                mean < PLATEAU_TAPER_TIMES * limits->taper_microamps;
    if (!runs) {
        plateau_path_reset(path);
        return false;
    }
    steady_watch_add_minute(&path->current, mean, mean * STEADY_PERCENT / 100);
    if (limits->flatness_microvolts > 0) {
        steady_watch_add_minute(&path->voltage, minute->mean_microvolts,
                                limits->flatness_microvolts);
    }
    return true;
}

bool plateau_path_is_proven(const struct plateau_path *path,
                            const struct full_charge_limits *limits)
{
    bool flat =
        limits->flatness_microvolts == 0 || path->voltage.minutes >= limits->plateau_minutes;
    return flat && path->current.minutes >= limits->plateau_minutes;
}

void plateau_path_reset(struct plateau_path *path)
{
    path->current.minutes = 0;
    path->voltage.minutes = 0;
}

bool float_path_judge(struct float_path *path, const struct full_charge_limits *limits,
                      const struct minute_figures *minute, int32_t temperature_millicelsius,
                      const struct flow_watch *flow)
{
    /* The current must not run out of the battery either: only a charger holds it there. */
    bool runs = limits->float_minutes > 0 && !minute->doubtful && flow->flow_seen &&
                minute->mean_microamps <= limits->float_microamps &&
                minute->mean_microamps >= -limits->no_flow_microamps &&
                minute->lowest_microvolts >=
                    full_charge_float_microvolts(limits, temperature_millicelsius);
    if (runs) {
        hold_timer_inside(&path->hold);
    } else {
        hold_timer_outside(&path->hold);
    }
    return runs;
}

bool float_path_is_proven(const struct float_path *path, const struct full_charge_limits *limits)
{
    return limits->float_minutes > 0 && path->hold.held_minutes >= limits->float_minutes;
}
