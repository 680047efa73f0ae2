#include "estimate/rate_model.h"

#include "charge/state_of_charge.h"
#include "fixed/log2_table.h"
#include "port/sample.h"

#define MILLIS_PER_HOUR 3600000
#define PART_BITS 30u
#define RATED_MILLICELSIUS 25000
#define COOL_MILLICELSIUS 10000
#define COLD_MILLICELSIUS (-20000)

/* At and below this no battery's temperature is read, but an open sensor's. */
#define COLDEST_PLAUSIBLE_MILLICELSIUS (-40000)

/* At most its warmer neighbour, so that the curve never falls as the temperature rises. */
static int32_t held(int32_t ppm, int32_t limit)
{
    return max_int32(1, min_int32(ppm, limit));
}

void rate_model_init(struct rate_model *m, const struct gauge_settings *settings)
{
    m->capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    int64_t rated_hours = max_int64(1, setting_of(settings, SETTING_RATED_TIME));
    /* nC / ms = uA; the logarithms are taken apart, so that small ratings keep their fraction. */
    m->log2_rated_q24 =
        log2_q24(m->capacity_nanocoulombs) - log2_q24(rated_hours * MILLIS_PER_HOUR);
    int32_t exponent_ppm = setting_int32_of(settings, SETTING_PEUKERT_EXPONENT);
    m->exponent_less_one_ppm = max_int32(0, min_int32(exponent_ppm - FULL_PPM, 1000000));
    m->at_10_ppm = held(setting_int32_of(settings, SETTING_USABLE_AT_10), FULL_PPM);
    m->at_0_ppm = held(setting_int32_of(settings, SETTING_USABLE_AT_0), m->at_10_ppm);
    m->at_minus_20_ppm = held(setting_int32_of(settings, SETTING_USABLE_AT_MINUS_20), m->at_0_ppm);
}

int64_t rate_model_factor_q24(const struct rate_model *m, int32_t current_microamps)
{
    if (current_microamps >= 0 || m->exponent_less_one_ppm == 0) {
        return LOG2_ONE_Q24;
    }
    int64_t ratio_log2 = (int64_t)log2_q24(-(int64_t)current_microamps) - m->log2_rated_q24;
    if (ratio_log2 <= 0) {
        return LOG2_ONE_Q24;
    }
    return exp2_q24((int32_t)(ratio_log2 * m->exponent_less_one_ppm / FULL_PPM));
}

static int32_t line(int32_t place, int32_t length, int32_t from, int32_t to)
{
    return from + (int32_t)((int64_t)(to - from) * place / length);
}

int32_t rate_model_warm_ppm(const struct rate_model *m, int32_t millicelsius)
{
    if (millicelsius == TEMPERATURE_ABSENT || millicelsius <= COLDEST_PLAUSIBLE_MILLICELSIUS ||
        millicelsius >= RATED_MILLICELSIUS) {
        return FULL_PPM;
    }
    if (millicelsius >= COOL_MILLICELSIUS) {
        return line(millicelsius - COOL_MILLICELSIUS, RATED_MILLICELSIUS - COOL_MILLICELSIUS,
                    m->at_10_ppm, FULL_PPM);
    }
    if (millicelsius >= 0) {
        return line(millicelsius, COOL_MILLICELSIUS, m->at_0_ppm, m->at_10_ppm);
    }
    return line(max_int32(millicelsius, COLD_MILLICELSIUS) - COLD_MILLICELSIUS, -COLD_MILLICELSIUS,
                m->at_minus_20_ppm, m->at_0_ppm);
}

int64_t rate_model_behind_nanocoulombs(const struct rate_model *m, int32_t current_microamps,
                                       int32_t millicelsius)
{
    if (current_microamps >= 0) {
        return 0;
    }
    int64_t part_q30 = (INT64_C(1) << (PART_BITS + LOG2_FRACTION_BITS)) /
                       rate_model_factor_q24(m, current_microamps) *
                       rate_model_warm_ppm(m, millicelsius) / FULL_PPM;
    /* The capacity is split at bit 30, so each product stays below 2^62. */
    int64_t high = m->capacity_nanocoulombs >> PART_BITS;
    int64_t low = m->capacity_nanocoulombs & ((INT64_C(1) << PART_BITS) - 1);
    return m->capacity_nanocoulombs - high * part_q30 - ((low * part_q30) >> PART_BITS);
}

int64_t rate_model_usable_nanocoulombs(const struct rate_model *m, int64_t charge_nanocoulombs,
                                       int32_t current_microamps, int32_t millicelsius)
{
    int64_t charge = max_int64(0, charge_nanocoulombs);
    return max_int64(0,
                     charge - rate_model_behind_nanocoulombs(m, current_microamps, millicelsius));
}
