/*
 * What the installer tells the gauge: one table of named integers with units, limits and defaults.
 * A gauge keeps a pointer to its settings and never writes to them, so they may lie in flash.
 */
#ifndef GAUGE_SETTINGS_GAUGE_SETTINGS_H
#define GAUGE_SETTINGS_GAUGE_SETTINGS_H

#include <stdbool.h>
#include <stdint.h>

#include "settings/setting_list.h"

#define SETTING_AS_ENUM(name, key, unit, smallest, largest, usual) SETTING_##name,

enum setting { SETTING_LIST(SETTING_AS_ENUM) SETTING_COUNT };

/* Each in the unit that the list names. Every range of a checked value fits 32 bits. */
struct gauge_settings {
    int64_t values[SETTING_COUNT];
};

/* The default of every setting. */
void gauge_settings_init(struct gauge_settings *settings);

/* The first rule that the values break; docs/rules.md lists them under "Settings". */
enum settings_problem {
    SETTINGS_GOOD,
    SETTINGS_OUT_OF_RANGE,
    SETTINGS_DROP_ABOVE_FULL_SCALE,
    SETTINGS_MARGIN_NOT_UNDER_ABSORPTION,
    SETTINGS_ABSORPTION_ABOVE_FULL_SCALE,
    SETTINGS_FLOAT_ABOVE_ABSORPTION,
    SETTINGS_EMPTY_NOT_UNDER_THRESHOLD,
    SETTINGS_REST_VOLTAGES_DO_NOT_RISE,
    SETTINGS_COLD_LEAVES_MORE
};

/*
 * Checks a set as a whole; a gauge is built from SETTINGS_GOOD alone. Where the answer is another,
 * *culprit is the setting to change.
 */
enum settings_problem gauge_settings_check(const struct gauge_settings *settings,
                                           enum setting *culprit);

/* CRC-32 of all values in table order, eight bytes each, little endian (M3). */
uint32_t gauge_settings_fingerprint(const struct gauge_settings *settings);

static inline int64_t setting_of(const struct gauge_settings *settings, enum setting setting)
{
    return settings->values[setting];
}

/* For parameters of 32 bits: the checked range fits. */
static inline int32_t setting_int32_of(const struct gauge_settings *settings, enum setting setting)
{
    return (int32_t)settings->values[setting];
}

#endif
