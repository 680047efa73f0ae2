#include "settings/gauge_settings.h"

#include "fixed/crc32.h"

struct range {
    int32_t smallest;
    int32_t largest;
    int32_t usual;
};

#define SETTING_AS_RANGE(name, key, unit, smallest, largest, usual) {smallest, largest, usual},

static const struct range RANGES[SETTING_COUNT] = {SETTING_LIST(SETTING_AS_RANGE)};

void gauge_settings_init(struct gauge_settings *settings)
{
    for (int i = 0; i < SETTING_COUNT; i++) {
        settings->values[i] = RANGES[i].usual;
    }
}

static enum settings_problem check_full(const struct gauge_settings *s, enum setting *culprit)
{
    int64_t absorption = setting_of(s, SETTING_ABSORPTION);
    int64_t threshold = absorption - setting_of(s, SETTING_ABSORPTION_MARGIN);
    if (threshold <= 0) {
        *culprit = SETTING_ABSORPTION_MARGIN;
        return SETTINGS_MARGIN_NOT_UNDER_ABSORPTION;
    }
    if (absorption > setting_of(s, SETTING_VOLTAGE_FULL_SCALE)) {
        *culprit = SETTING_ABSORPTION;
        return SETTINGS_ABSORPTION_ABOVE_FULL_SCALE;
    }
    if (setting_of(s, SETTING_FLOAT_VOLTAGE) > absorption) {
        *culprit = SETTING_FLOAT_VOLTAGE;
        return SETTINGS_FLOAT_ABOVE_ABSORPTION;
    }
    if (setting_of(s, SETTING_EMPTY_VOLTAGE) >= threshold) {
        *culprit = SETTING_EMPTY_VOLTAGE;
        return SETTINGS_EMPTY_NOT_UNDER_THRESHOLD;
    }
    return SETTINGS_GOOD;
}

enum settings_problem gauge_settings_check(const struct gauge_settings *s, enum setting *culprit)
{
    for (int i = 0; i < SETTING_COUNT; i++) {
        *culprit = (enum setting)i;
        if (s->values[i] < RANGES[i].smallest || s->values[i] > RANGES[i].largest) {
            return SETTINGS_OUT_OF_RANGE;
        }
    }
    if (setting_of(s, SETTING_SHUNT_RATED_DROP) > setting_of(s, SETTING_SHUNT_FULL_SCALE)) {
        *culprit = SETTING_SHUNT_RATED_DROP;
        return SETTINGS_DROP_ABOVE_FULL_SCALE;
    }
    if (setting_of(s, SETTING_ABSORPTION) > 0) {
        enum settings_problem problem = check_full(s, culprit);
        if (problem != SETTINGS_GOOD) {
            return problem;
        }
    }
    /* The seven points stand together in the table. */
    for (int i = SETTING_REST_VOLTAGE_10; i <= SETTING_REST_VOLTAGE_100; i++) {
        *culprit = (enum setting)i;
        if (s->values[i] <= s->values[i - 1]) {
            return SETTINGS_REST_VOLTAGES_DO_NOT_RISE;
        }
    }
    *culprit = SETTING_USABLE_AT_0;
    if (setting_of(s, SETTING_USABLE_AT_0) > setting_of(s, SETTING_USABLE_AT_10)) {
        return SETTINGS_COLD_LEAVES_MORE;
    }
    *culprit = SETTING_USABLE_AT_MINUS_20;
    if (setting_of(s, SETTING_USABLE_AT_MINUS_20) > setting_of(s, SETTING_USABLE_AT_0)) {
        return SETTINGS_COLD_LEAVES_MORE;
    }
    return SETTINGS_GOOD;
}

uint32_t gauge_settings_fingerprint(const struct gauge_settings *settings)
{
    uint32_t crc = CRC32_START;
    for (int i = 0; i < SETTING_COUNT; i++) {
        uint64_t bits = (uint64_t)settings->values[i];
        for (unsigned shift = 0; shift < 64; shift += 8) {
            crc = crc32_add(crc, (uint8_t)((bits >> shift) & 0xFFu));
        }
    }
    return ~crc;
}
