/* Figures as a display shows them, without flicker (V1 to V3, T8); the count takes no notice. */
#ifndef GAUGE_READOUT_DISPLAY_ROUNDING_H
#define GAUGE_READOUT_DISPLAY_ROUNDING_H

#include <stdbool.h>
#include <stdint.h>

/* A time: taken over when it differs by 2 % and a minute, or when the shown one is a minute old. */
struct shown_hours {
    int64_t taken_millis;
    int32_t taken_minutes;
    bool shown;
};

void shown_hours_update(struct shown_hours *hours, int32_t minutes, int64_t uptime_millis);

/* There is no time any more; the next one is shown at once. */
void shown_hours_clear(struct shown_hours *hours);

/* Rounded down: to 5 minutes from 10 h, to an hour from 24 h. */
int32_t shown_hours_minutes(const struct shown_hours *hours);

/*
 * The next figure of a percentage, 0 to 100 or READOUT_NOT_KNOWN, after the one shown now: 100 only
 * when full is proven, 0 only when empty, one up only from half a percent beyond it.
 */
int32_t shown_percent_next(int32_t shown_percent, int32_t ppm, bool full_proven);

/* Tenths of an ampere, halves away from zero; below the smallest current to be shown zero. */
int32_t shown_tenths_of_amp(int32_t current_microamps, int64_t zero_below_microamps);

#endif
