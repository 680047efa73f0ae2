/*
 * Charge lost inside the battery, which no shunt sees (G23): a part of the capacity a month at
 * 20 degrees Celsius, doubling every 10 K.
 */
#ifndef GAUGE_CHARGE_SELF_DISCHARGE_H
#define GAUGE_CHARGE_SELF_DISCHARGE_H

#include <stdint.h>

/* Warmth of 1.0: 20 degrees Celsius. */
#define WARMTH_AT_20_CELSIUS_Q8 256

struct self_discharge {
    int64_t loss_per_month_nanocoulombs;
    int64_t remainder_nanocoulombs;
};

void self_discharge_init(struct self_discharge *d, int64_t ppm_per_month,
                         int64_t capacity_nanocoulombs);

/* Self-discharge at a temperature over that at 20 degrees: 16 to 16384, in 1/256. */
int32_t self_discharge_warmth_q8(int32_t temperature_millicelsius);

/* The loss of one minute, remainder carried; 0 or more. */
int64_t self_discharge_minute_nanocoulombs(struct self_discharge *d, int32_t warmth_q8);

#endif
