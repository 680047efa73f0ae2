/* Alarm at a low state of charge: comes at one level and goes at a higher one (T7). */
#ifndef GAUGE_ESTIMATE_LOW_CHARGE_ALARM_H
#define GAUGE_ESTIMATE_LOW_CHARGE_ALARM_H

#include <stdbool.h>
#include <stdint.h>

#include "fixed/fixed_math.h"
#include "port/readout.h"

struct low_charge_alarm {
    int32_t on_ppm;
    int32_t off_ppm;
    bool on;
};

/* On level 0 switches the alarm off. */
static inline void low_charge_alarm_init(struct low_charge_alarm *alarm, int32_t on_ppm,
                                         int32_t hysteresis_ppm)
{
    alarm->on_ppm = max_int32(0, on_ppm);
    alarm->off_ppm =
        (int32_t)min_int64((int64_t)alarm->on_ppm + max_int32(1, hysteresis_ppm), 1000000);
    alarm->on = false;
}

/* While the charge is unknown the alarm stays as it is. */
static inline void low_charge_alarm_update(struct low_charge_alarm *alarm, int32_t ppm)
{
    if (ppm == READOUT_NOT_KNOWN || alarm->on_ppm == 0) {
        return;
    }
    if (ppm <= alarm->on_ppm) {
        alarm->on = true;
    } else if (ppm >= alarm->off_ppm) {
        alarm->on = false;
    }
}

#endif
