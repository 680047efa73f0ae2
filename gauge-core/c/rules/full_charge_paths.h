/* The three ways to full: taper (F3 to F8), plateau (F10) and float (F11). */
#ifndef GAUGE_RULES_FULL_CHARGE_PATHS_H
#define GAUGE_RULES_FULL_CHARGE_PATHS_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "port/codes.h"
#include "rules/flow_watch.h"
#include "rules/full_charge_limits.h"
#include "rules/rule_parts.h"

struct taper_path {
    struct hold_timer hold;
    struct steady_watch flatness;
};

struct plateau_path {
    struct steady_watch current;
    struct steady_watch voltage;
};

struct float_path {
    struct hold_timer hold;
};

/* Answers HOLD_RUNNING when the minute speaks for full, else what stands in the way. */
enum rule_reason taper_path_judge(struct taper_path *path, const struct full_charge_limits *limits,
                                  const struct minute_figures *minute, int64_t threshold_microvolts,
                                  const struct flow_watch *flow);

void taper_path_reset(struct taper_path *path);

/* Answers whether a plateau may be under way; four things together, without any forgiveness. */
bool plateau_path_judge(struct plateau_path *path, const struct full_charge_limits *limits,
                        const struct minute_figures *minute, enum rule_reason obstacle,
                        bool at_limit);

bool plateau_path_is_proven(const struct plateau_path *path,
                            const struct full_charge_limits *limits);

void plateau_path_reset(struct plateau_path *path);

/* Answers whether the minute speaks for a full battery on float. */
bool float_path_judge(struct float_path *path, const struct full_charge_limits *limits,
                      const struct minute_figures *minute, int32_t temperature_millicelsius,
                      const struct flow_watch *flow);

bool float_path_is_proven(const struct float_path *path, const struct full_charge_limits *limits);

#endif
