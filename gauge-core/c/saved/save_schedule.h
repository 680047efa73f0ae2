/*
 * When to save (M2): by charge moved, not by time, so that a parked system writes almost nothing
 * and a busy one never loses more than a step.
 */
#ifndef GAUGE_SAVED_SAVE_SCHEDULE_H
#define GAUGE_SAVED_SAVE_SCHEDULE_H

#include <stdbool.h>
#include <stdint.h>

#include "settings/gauge_settings.h"

#define FALLING_WINDOW_SECONDS 10

/* Why the state shall be saved now. */
enum save_reason {
    SAVE_REASON_NONE,
    SAVE_REASON_SETTINGS_CHANGED,
    SAVE_REASON_ANCHORED,
    SAVE_REASON_CHARGE_MOVED,
    SAVE_REASON_VOLTS_FALLING,
    SAVE_REASON_DAY_PASSED
};

/* The highest voltage of each of the last ten seconds, to tell a fast fall from a slow one. */
struct falling_volts {
    int32_t fall_microvolts;
    int32_t second_count;
    int32_t second_millis;
    int32_t highest_microvolts[FALLING_WINDOW_SECONDS];
};

struct save_schedule {
    /* Parameters. */
    int64_t step_nanocoulombs;
    int32_t floor_microvolts;
    /* State. */
    struct falling_volts falling;
    int64_t saved_charge_nanocoulombs;
    int64_t saved_gross_nanocoulombs;
    int32_t since_save_millis;
    int32_t since_power_up_millis;
    int32_t credit_count;
    bool anchor_pending;
    bool settings_pending;
    enum save_reason last_reason;
};

void save_schedule_init(struct save_schedule *schedule, const struct gauge_settings *settings);

/* What was restored is what the memory holds: nothing is due. */
void save_schedule_power_up(struct save_schedule *schedule, int64_t charge_nanocoulombs,
                            int64_t gross_nanocoulombs);

/* The figures of one tick; elapsed since the call before, 0 to 65,535. */
struct save_moment {
    int64_t charge_nanocoulombs;
    int64_t gross_nanocoulombs;
    int32_t voltage_microvolts;
    int32_t elapsed_millis;
};

/* Asks, once a tick; every answer but NONE stays due until save_schedule_attempted. */
enum save_reason save_schedule_due(struct save_schedule *schedule, const struct save_moment *now);

/* A save was tried, with or without success; a failed one is not repeated before a step later. */
void save_schedule_attempted(struct save_schedule *schedule, int64_t charge_nanocoulombs,
                             int64_t gross_nanocoulombs);

#endif
