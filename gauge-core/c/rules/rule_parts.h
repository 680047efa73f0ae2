/* Small parts that several rules are built from. */
#ifndef GAUGE_RULES_RULE_PARTS_H
#define GAUGE_RULES_RULE_PARTS_H

#include <stdbool.h>
#include <stdint.h>

#include "fixed/fixed_math.h"

/* The one word with which a rule answers; the gauge alone acts on it. */
enum rule_outcome {
    RULE_OUTCOME_NONE,
    RULE_OUTCOME_SET_TO_FULL,
    RULE_OUTCOME_ARMED,
    RULE_OUTCOME_SET_TO_EMPTY,
    RULE_OUTCOME_EARLY_EMPTY,
    RULE_OUTCOME_CORRECTED_BY_REST,
    RULE_OUTCOME_BAND_CLIPPED
};

/* The quiet time of one rule (F14, E7, R8); each passes its minutes itself. */
struct quiet_time {
    int32_t whole_minutes;
    int32_t left_minutes;
};

static inline void quiet_time_begin(struct quiet_time *quiet)
{
    quiet->left_minutes = quiet->whole_minutes;
}

/* Whether the minute that passes belonged to the quiet time. */
static inline bool quiet_time_pass_minute(struct quiet_time *quiet)
{
    if (quiet->left_minutes > 0) {
        quiet->left_minutes--;
        return true;
    }
    return false;
}

/* A gap up to the first only pauses a hold; one of the second starts it again (F6). */
#define HOLD_PAUSE_MINUTES 2
#define HOLD_RESET_MINUTES 15

struct hold_timer {
    int32_t held_minutes;
    int32_t outside_minutes;
};

static inline void hold_timer_reset(struct hold_timer *hold)
{
    hold->held_minutes = 0;
    hold->outside_minutes = 0;
}

static inline void hold_timer_inside(struct hold_timer *hold)
{
    hold->held_minutes++;
    hold->outside_minutes = 0;
}

static inline void hold_timer_outside(struct hold_timer *hold)
{
    hold->outside_minutes++;
    if (hold->outside_minutes >= HOLD_RESET_MINUTES) {
        hold->held_minutes = 0;
    } else if (hold->outside_minutes > HOLD_PAUSE_MINUTES && hold->held_minutes > 0) {
        hold->held_minutes--;
    }
}

/* How long a figure has stayed within a span; starts again on a move. */
struct steady_watch {
    int64_t lowest;
    int64_t highest;
    int32_t minutes;
};

static inline void steady_watch_add_minute(struct steady_watch *watch, int64_t value, int64_t span)
{
    int64_t lowest = min_int64(watch->lowest, value);
    int64_t highest = max_int64(watch->highest, value);
    if (watch->minutes == 0 || highest - lowest > span) {
        watch->minutes = 1;
        watch->lowest = value;
        watch->highest = value;
    } else {
        watch->minutes++;
        watch->lowest = lowest;
        watch->highest = highest;
    }
}

#endif
