#include "readout/display_rounding.h"

#include "fixed/fixed_math.h"
#include "port/readout.h"

#define OLD_MILLIS 60000
#define LEAST_CHANGE_PERCENT 2
#define FINE_BELOW_MINUTES 600
#define MEDIUM_BELOW_MINUTES 1440
#define MEDIUM_MINUTES 5
#define MINUTES_PER_HOUR 60
#define PPM_PER_PERCENT 10000
#define HYSTERESIS_PPM (PPM_PER_PERCENT / 2)
#define FULL_PERCENT 100
#define FULL_PPM 1000000
#define TENTH_MICROAMPS 100000

void shown_hours_update(struct shown_hours *h, int32_t minutes, int64_t uptime_millis)
{
    int64_t change = magnitude((int64_t)minutes - h->taken_minutes);
    bool large =
        change >= 1 && change * 100 >= (int64_t)h->taken_minutes * LEAST_CHANGE_PERCENT;
    if (h->shown && !large && uptime_millis - h->taken_millis < OLD_MILLIS) {
        return;
    }
    h->shown = true;
    h->taken_minutes = minutes;
    h->taken_millis = uptime_millis;
}

void shown_hours_clear(struct shown_hours *h)
{
    h->shown = false;
    h->taken_minutes = 0;
}

int32_t shown_hours_minutes(const struct shown_hours *h)
{
    if (h->taken_minutes < FINE_BELOW_MINUTES) {
        return h->taken_minutes;
    }
    int32_t step = h->taken_minutes < MEDIUM_BELOW_MINUTES ? MEDIUM_MINUTES : MINUTES_PER_HOUR;
    return h->taken_minutes - h->taken_minutes % step;
}

int32_t shown_percent_next(int32_t shown_percent, int32_t ppm, bool full_proven)
{
    if (ppm < 0) {
        return READOUT_NOT_KNOWN;
    }
    if (ppm == 0) {
        return 0;
    }
    /* A proven 100 stands until half a percent has left. */
    int32_t least_for_full =
        shown_percent == FULL_PERCENT ? FULL_PPM - HYSTERESIS_PPM : FULL_PPM;
    if (full_proven && ppm >= least_for_full) {
        return FULL_PERCENT;
    }
    int32_t held = max_int32(1, min_int32(ppm / PPM_PER_PERCENT, FULL_PERCENT - 1));
    bool flicker = shown_percent > 0 && held == shown_percent + 1 &&
                   ppm < held * PPM_PER_PERCENT + HYSTERESIS_PPM;
    return flicker ? shown_percent : held;
}

int32_t shown_tenths_of_amp(int32_t current_microamps, int64_t zero_below_microamps)
{
    int64_t size = magnitude((int64_t)current_microamps);
    if (size < zero_below_microamps) {
        return 0;
    }
    int32_t tenths = (int32_t)((size + TENTH_MICROAMPS / 2) / TENTH_MICROAMPS);
    return current_microamps < 0 ? -tenths : tenths;
}
