/*
 * Hours to full (T6): a bulk part at the present current, then the taper. The taper begins where
 * the missing charge is the time constant times the current.
 */
#ifndef GAUGE_ESTIMATE_TIME_TO_FULL_H
#define GAUGE_ESTIMATE_TIME_TO_FULL_H

#include <stdbool.h>
#include <stdint.h>

#include "port/codes.h"
#include "settings/gauge_settings.h"

#define STEADY_SOURCE_MINUTES 15

/* Time constant of the taper: declared, or measured from the last taper that halved. */
struct taper_time {
    int32_t declared_minutes;
    int32_t measured_minutes;
    int32_t reference_microamps;
    int32_t since_reference_minutes;
};

struct time_to_full {
    int64_t capacity_nanocoulombs;
    int64_t least_microamps;
    int64_t end_microamps;
    int32_t efficiency_ppm;
    int32_t longest_minutes;
    struct taper_time taper;
    /* The last minutes of charging. */
    int32_t minute_microamps[STEADY_SOURCE_MINUTES];
    int32_t charging_minutes;
    int32_t next_index;
    bool at_full_voltage;
    /* The last answer. */
    enum full_time_state state;
    int32_t minutes;
};

void time_to_full_init(struct time_to_full *t, const struct gauge_settings *settings);

/* One whole minute; full voltage: the battery stood at the charger's full voltage all of it. */
void time_to_full_add_minute(struct time_to_full *t, bool known, int64_t charge_nanocoulombs,
                             int32_t mean_microamps, bool full_voltage);

#endif
