#include "fixed/fixed_math.h"
#include "rules/diagnosis.h"

/* So many contradictions in a row are no coincidence. */
#define CONTRADICTION_COUNT 3
#define RESISTANCE_DIVISOR 8
#define REFERENCE_STEP_COUNT 16
#define OHM_MICROOHMS 1000000
#define LARGEST_MICROOHMS 1000000

/* Only steps that go the other way than the last one count: nothing steady moves up and down. */
static void silent_step(struct step_watch *w, bool up)
{
    if (w->silent_count == 0 || up != w->last_silent_up) {
        w->silent_count = min_int32(w->silent_count + 1, CONTRADICTION_COUNT);
    }
    w->last_silent_up = up;
}

static void current_step(struct step_watch *w, int64_t current_step_microamps,
                         int64_t voltage_step_microvolts, bool discharging)
{
    bool reversed = (current_step_microamps < 0) != (voltage_step_microvolts < 0);
    if (magnitude(voltage_step_microvolts) >= w->telling_microvolts) {
        w->reversed_count =
            reversed ? min_int32(w->reversed_count + 1, CONTRADICTION_COUNT) : 0;
    }
    if (reversed || !discharging) {
        return;
    }
    int64_t microohms = clamp(magnitude(voltage_step_microvolts) * OHM_MICROOHMS /
                                  magnitude(current_step_microamps),
                              0, LARGEST_MICROOHMS);
    w->step_count = min_int32(w->step_count + 1, REFERENCE_STEP_COUNT + 1);
    w->resistance_microohms =
        w->step_count == 1
            ? microohms
            : w->resistance_microohms +
                  divide_half_away_from_zero(microohms - w->resistance_microohms,
                                             RESISTANCE_DIVISOR);
    if (w->step_count == REFERENCE_STEP_COUNT) {
        w->reference_microohms = w->resistance_microohms;
    }
}

void step_watch_add_minute(struct step_watch *w, int32_t microamps, int32_t microvolts,
                           bool cut_off)
{
    int64_t current_step_microamps = (int64_t)microamps - w->last_microamps;
    int64_t voltage_step_microvolts = (int64_t)microvolts - w->last_microvolts;
    /* A charge lifts the voltage by far more than the resistance does (D3). */
    bool discharging =
        w->last_microamps <= w->still_microamps && microamps <= w->still_microamps;
    bool own = !cut_off && !w->last_cut_off;
    bool first = !w->started;
    w->started = true;
    w->last_cut_off = cut_off;
    w->last_microamps = microamps;
    w->last_microvolts = microvolts;
    if (first) {
        return;
    }
    if (magnitude(current_step_microamps) >= w->step_microamps) {
        w->silent_count = 0;
        if (own) {
            current_step(w, current_step_microamps, voltage_step_microvolts, discharging);
        }
    } else if (magnitude(current_step_microamps) <= w->still_microamps &&
               magnitude(voltage_step_microvolts) >= w->step_microvolts) {
        silent_step(w, voltage_step_microvolts > 0);
    }
}

void step_watch_forget(struct step_watch *w)
{
    w->started = false;
    w->reversed_count = 0;
    w->silent_count = 0;
    w->step_count = 0;
    w->resistance_microohms = 0;
    w->reference_microohms = 0;
}

bool step_watch_is_reversed(const struct step_watch *w)
{
    return w->reversed_count >= CONTRADICTION_COUNT;
}

bool step_watch_is_silent(const struct step_watch *w)
{
    return w->silent_count >= CONTRADICTION_COUNT;
}

bool step_watch_is_resistance_risen(const struct step_watch *w)
{
    return w->reference_microohms > 0 && w->resistance_microohms >= 2 * w->reference_microohms;
}
