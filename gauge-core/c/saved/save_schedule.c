#include "saved/save_schedule.h"

#include "charge/state_of_charge.h"
#include "fixed/fixed_math.h"

/* A fall this part of the nominal voltage within ten seconds is fast: 0.5 V for 12 V. */
#define FALL_DIVISOR 24

/* No save begins under this part of the nominal voltage. */
#define FLOOR_DIVISOR 2
#define GROSS_STEP_COUNT 4
#define EARLY_DIVISOR 10
#define MOST_CREDIT_COUNT 4
#define QUIET_MILLIS 5000
#define URGENT_GAP_MILLIS 10000
#define DAY_MILLIS 86400000
#define MILLIS_PER_SECOND 1000

static void falling_volts_forget(struct falling_volts *f)
{
    for (int i = 0; i < FALLING_WINDOW_SECONDS; i++) {
        f->highest_microvolts[i] = INT32_MIN;
    }
    f->second_count = 0;
    f->second_millis = 0;
}

void save_schedule_init(struct save_schedule *s, const struct gauge_settings *settings)
{
    *s = (struct save_schedule){0};
    int64_t capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    s->step_nanocoulombs = state_of_charge_nanocoulombs(setting_of(settings, SETTING_SAVE_STEP),
                                                        capacity_nanocoulombs);
    int32_t nominal_microvolts = setting_int32_of(settings, SETTING_NOMINAL_VOLTAGE) * 1000;
    s->floor_microvolts = nominal_microvolts / FLOOR_DIVISOR;
    s->falling.fall_microvolts = nominal_microvolts / FALL_DIVISOR;
    falling_volts_forget(&s->falling);
}

/* Whether the voltage lies a fast fall or more under the highest of the window. */
static bool falls_fast(struct falling_volts *f, int32_t microvolts, int32_t elapsed_millis)
{
    f->second_millis += elapsed_millis;
    if (f->second_millis >= MILLIS_PER_SECOND) {
        int32_t steps = min_int32(f->second_millis / MILLIS_PER_SECOND, FALLING_WINDOW_SECONDS);
        f->second_millis %= MILLIS_PER_SECOND;
        for (int32_t i = 0; i < steps; i++) {
            f->second_count =
                f->second_count + 1 == FALLING_WINDOW_SECONDS ? 0 : f->second_count + 1;
            f->highest_microvolts[f->second_count] = INT32_MIN;
        }
    }
    f->highest_microvolts[f->second_count] =
        max_int32(f->highest_microvolts[f->second_count], microvolts);
    int32_t highest = INT32_MIN;
    for (int i = 0; i < FALLING_WINDOW_SECONDS; i++) {
        highest = max_int32(highest, f->highest_microvolts[i]);
    }
    return (int64_t)highest - microvolts > f->fall_microvolts;
}

void save_schedule_power_up(struct save_schedule *s, int64_t charge_nanocoulombs,
                            int64_t gross_nanocoulombs)
{
    s->saved_charge_nanocoulombs = charge_nanocoulombs;
    s->saved_gross_nanocoulombs = gross_nanocoulombs;
    /* The last save lies before power-up: an urgent one need not wait. */
    s->since_save_millis = URGENT_GAP_MILLIS;
    s->since_power_up_millis = 0;
    s->credit_count = 1;
    s->anchor_pending = false;
    s->settings_pending = false;
    s->last_reason = SAVE_REASON_NONE;
    falling_volts_forget(&s->falling);
}

static enum save_reason reason_of(const struct save_schedule *s, const struct save_moment *now,
                                  bool falling)
{
    int64_t net_moved = magnitude(now->charge_nanocoulombs - s->saved_charge_nanocoulombs);
    /* The sum of in and out wraps, and a difference of two is right across the wrap. */
    int64_t gross_moved = wrapping_subtract(now->gross_nanocoulombs, s->saved_gross_nanocoulombs);
    bool urgent_allowed = s->since_save_millis >= URGENT_GAP_MILLIS;
    if (s->settings_pending && urgent_allowed) {
        return SAVE_REASON_SETTINGS_CHANGED;
    }
    if (s->anchor_pending && urgent_allowed) {
        return SAVE_REASON_ANCHORED;
    }
    if (net_moved >= s->step_nanocoulombs ||
        gross_moved >= GROSS_STEP_COUNT * s->step_nanocoulombs) {
        return SAVE_REASON_CHARGE_MOVED;
    }
    if (falling && urgent_allowed && s->credit_count > 0 &&
        s->since_power_up_millis >= QUIET_MILLIS &&
        net_moved >= s->step_nanocoulombs / EARLY_DIVISOR) {
        return SAVE_REASON_VOLTS_FALLING;
    }
    return s->since_save_millis >= DAY_MILLIS ? SAVE_REASON_DAY_PASSED : SAVE_REASON_NONE;
}

enum save_reason save_schedule_due(struct save_schedule *s, const struct save_moment *now)
{
    s->since_save_millis = min_int32(s->since_save_millis + now->elapsed_millis, DAY_MILLIS);
    s->since_power_up_millis =
        min_int32(s->since_power_up_millis + now->elapsed_millis, DAY_MILLIS);
    bool falling = falls_fast(&s->falling, now->voltage_microvolts, now->elapsed_millis);
    s->last_reason = now->voltage_microvolts < s->floor_microvolts ? SAVE_REASON_NONE
                                                                   : reason_of(s, now, falling);
    return s->last_reason;
}

void save_schedule_attempted(struct save_schedule *s, int64_t charge_nanocoulombs,
                             int64_t gross_nanocoulombs)
{
    if (s->last_reason == SAVE_REASON_CHARGE_MOVED) {
        s->credit_count = min_int32(s->credit_count + 1, MOST_CREDIT_COUNT);
    } else if (s->last_reason == SAVE_REASON_VOLTS_FALLING) {
        s->credit_count--;
    }
    s->last_reason = SAVE_REASON_NONE;
    s->saved_charge_nanocoulombs = charge_nanocoulombs;
    s->saved_gross_nanocoulombs = gross_nanocoulombs;
    s->since_save_millis = 0;
    s->anchor_pending = false;
    s->settings_pending = false;
}
