#include "estimate/time_to_full.h"

#include "charge/state_of_charge.h"
#include "fixed/log2_table.h"

#define UNSTEADY_PERCENT 30
#define PERCENT 100
#define MILLIS_PER_MINUTE 60000
#define MILLIS_PER_HOUR 3600000
#define MINUTES_PER_HOUR 60

/* The least net current that counts as charging: 1 % of the capacity an hour. */
#define LEAST_DIVISOR 100

/* A measured time constant is held to a quarter and to four times the declared one. */
#define HOLD_TIMES 4
#define LONGEST_TAPER_MINUTES 1440

void time_to_full_init(struct time_to_full *t, const struct gauge_settings *settings)
{
    *t = (struct time_to_full){0};
    t->capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    t->efficiency_ppm =
        (int32_t)clamp(setting_of(settings, SETTING_COULOMBIC_EFFICIENCY), 100000, FULL_PPM);
    int64_t one_hour_microamps = t->capacity_nanocoulombs / MILLIS_PER_HOUR;
    int64_t end_ppm = setting_of(settings, SETTING_TAPER) / 2;
    t->least_microamps = max_int64(1, one_hour_microamps / LEAST_DIVISOR);
    t->end_microamps = max_int64(1, one_hour_microamps * end_ppm / FULL_PPM);
    t->longest_minutes =
        (int32_t)clamp(setting_of(settings, SETTING_LONGEST_TIME) * MINUTES_PER_HOUR, 1, 60000);
    t->taper.declared_minutes = max_int32(
        0, min_int32(setting_int32_of(settings, SETTING_TAPER_TIME), LONGEST_TAPER_MINUTES));
}

static void taper_start_at(struct taper_time *taper, int32_t microamps)
{
    taper->reference_microamps = max_int32(1, microamps);
    taper->since_reference_minutes = 0;
}

static void taper_end(struct taper_time *taper)
{
    taper->reference_microamps = 0;
    taper->since_reference_minutes = 0;
}

/*
 * When the current is half of where the look began, its time constant is the time over the natural
 * logarithm of the ratio. The two fractions are divided out one after the other.
 */
static void taper_add_minute(struct taper_time *taper, int32_t microamps)
{
    taper->since_reference_minutes++;
    if (taper->reference_microamps == 0 || microamps > taper->reference_microamps) {
        taper_start_at(taper, microamps);
        return;
    }
    int64_t ratio_q24 = (int64_t)log2_q24(taper->reference_microamps) - log2_q24(microamps);
    if (ratio_q24 < LOG2_ONE_Q24) {
        return;
    }
    int64_t per_half = (int64_t)taper->since_reference_minutes * LOG2_ONE_Q24 / ratio_q24;
    int64_t minutes = per_half * LOG2_ONE_Q24 / LOG2_LN2_Q24;
    if (taper->declared_minutes > 0) {
        minutes = max_int64(minutes, taper->declared_minutes / HOLD_TIMES);
        minutes = min_int64(minutes, (int64_t)taper->declared_minutes * HOLD_TIMES);
        taper->measured_minutes = (int32_t)max_int64(1, minutes);
    }
    taper_start_at(taper, microamps);
}

static void give(struct time_to_full *t, enum full_time_state state, int64_t minutes)
{
    t->state = state;
    t->minutes = (int32_t)min_int64(minutes, t->longest_minutes);
}

static void remember(struct time_to_full *t, int32_t mean_microamps, bool full_voltage)
{
    t->minute_microamps[t->next_index] = mean_microamps;
    t->next_index = t->next_index + 1 == STEADY_SOURCE_MINUTES ? 0 : t->next_index + 1;
    t->charging_minutes = min_int32(t->charging_minutes + 1, STEADY_SOURCE_MINUTES);
    t->at_full_voltage = full_voltage;
    if (full_voltage) {
        taper_add_minute(&t->taper, mean_microamps);
    } else {
        taper_end(&t->taper);
    }
}

/* Bulk: any minute 30 % off their mean. Full voltage: the newest 30 % above any before. */
static bool is_unsteady(const struct time_to_full *t)
{
    int64_t lowest = INT32_MAX;
    int64_t highest = INT32_MIN;
    int64_t sum = 0;
    for (int32_t i = 0; i < t->charging_minutes; i++) {
        lowest = min_int64(lowest, t->minute_microamps[i]);
        highest = max_int64(highest, t->minute_microamps[i]);
        sum += t->minute_microamps[i];
    }
    if (t->at_full_voltage) {
        int32_t newest_index = t->next_index == 0 ? STEADY_SOURCE_MINUTES - 1 : t->next_index - 1;
        int64_t newest = t->minute_microamps[newest_index];
        return newest * PERCENT > lowest * (PERCENT + UNSTEADY_PERCENT);
    }
    int64_t mean = sum / t->charging_minutes;
    return highest * PERCENT > mean * (PERCENT + UNSTEADY_PERCENT) ||
           lowest * PERCENT < mean * (PERCENT - UNSTEADY_PERCENT);
}

/* What must be put in so that this much is kept; split so that no product overflows. */
static int64_t gross(const struct time_to_full *t, int64_t nanocoulombs)
{
    int64_t quotient = nanocoulombs / t->efficiency_ppm;
    int64_t rest = nanocoulombs % t->efficiency_ppm;
    return quotient * FULL_PPM + rest * FULL_PPM / t->efficiency_ppm;
}

/* "Not before" is rounded down, the estimate up: neither promises full too early. */
static void estimate(struct time_to_full *t, int64_t charge_nanocoulombs, int32_t current_microamps)
{
    int64_t missing_in = gross(t, clamp(t->capacity_nanocoulombs - charge_nanocoulombs, 0,
                                        t->capacity_nanocoulombs));
    int64_t tau = t->taper.measured_minutes > 0 ? t->taper.measured_minutes
                                                : t->taper.declared_minutes;
    if (tau == 0 || (t->charging_minutes < STEADY_SOURCE_MINUTES && !t->at_full_voltage)) {
        give(t, FULL_TIME_STATE_NOT_BEFORE, missing_in / current_microamps / MILLIS_PER_MINUTE);
        return;
    }
    int64_t tau_millis = tau * MILLIS_PER_MINUTE;
    int64_t knee_microamps = current_microamps;
    int64_t bulk_millis = 0;
    if (!t->at_full_voltage) {
        knee_microamps = min_int64(current_microamps, missing_in / tau_millis);
        /* Below the knee the charger's current no longer decides. */
        bulk_millis =
            max_int64(0, missing_in - tau_millis * current_microamps) / current_microamps;
    }
    int64_t taper_millis = 0;
    if (knee_microamps > t->end_microamps) {
        int64_t log2_ratio = (int64_t)log2_q24(knee_microamps) - log2_q24(t->end_microamps);
        int64_t natural_q24 = (log2_ratio * LOG2_LN2_Q24) >> LOG2_FRACTION_BITS;
        taper_millis = (natural_q24 * tau_millis) >> LOG2_FRACTION_BITS;
    }
    int64_t whole = (bulk_millis + taper_millis + MILLIS_PER_MINUTE - 1) / MILLIS_PER_MINUTE;
    if (whole > t->longest_minutes) {
        give(t, FULL_TIME_STATE_NOT_BEFORE, t->longest_minutes);
    } else {
        give(t, FULL_TIME_STATE_ESTIMATE, whole);
    }
}

void time_to_full_add_minute(struct time_to_full *t, bool known, int64_t charge_nanocoulombs,
                             int32_t mean_microamps, bool full_voltage)
{
    /* In a taper the current may fall below what would count as charging elsewhere. */
    bool tapering = t->at_full_voltage && full_voltage;
    int64_t least =
        tapering ? min_int64(t->least_microamps, t->end_microamps) : t->least_microamps;
    if (mean_microamps < least) {
        t->charging_minutes = 0;
        t->next_index = 0;
        t->at_full_voltage = false;
        taper_end(&t->taper);
        give(t, FULL_TIME_STATE_NOT_CHARGING, 0);
        return;
    }
    remember(t, mean_microamps, full_voltage);
    if (!known && !full_voltage) {
        give(t, FULL_TIME_STATE_NO_ESTIMATE, 0);
    } else if (is_unsteady(t)) {
        give(t, FULL_TIME_STATE_UNSTEADY, 0);
    } else {
        estimate(t, charge_nanocoulombs, mean_microamps);
    }
}
