#include "charge/self_discharge.h"

#include "charge/state_of_charge.h"
#include "port/sample.h"

#define REFERENCE_MILLICELSIUS 20000
#define DOUBLING_MILLIKELVIN 10000
#define LOWEST_DOUBLING_COUNT (-4)
#define HIGHEST_DOUBLING_COUNT 6
#define MONTH_MINUTES 43200
#define WARMTH_BITS 8

void self_discharge_init(struct self_discharge *d, int64_t ppm_per_month,
                         int64_t capacity_nanocoulombs)
{
    d->loss_per_month_nanocoulombs =
        state_of_charge_nanocoulombs(ppm_per_month, capacity_nanocoulombs);
    d->remainder_nanocoulombs = 0;
}

int32_t self_discharge_warmth_q8(int32_t temperature_millicelsius)
{
    if (temperature_millicelsius == TEMPERATURE_ABSENT) {
        return WARMTH_AT_20_CELSIUS_Q8;
    }
    int64_t above = (int64_t)temperature_millicelsius - REFERENCE_MILLICELSIUS;
    int64_t step = floor_divide(above, DOUBLING_MILLIKELVIN);
    if (step < LOWEST_DOUBLING_COUNT) {
        return WARMTH_AT_20_CELSIUS_Q8 >> -LOWEST_DOUBLING_COUNT;
    }
    if (step >= HIGHEST_DOUBLING_COUNT) {
        return WARMTH_AT_20_CELSIUS_Q8 << HIGHEST_DOUBLING_COUNT;
    }
    /* 2^12 keeps the fraction of the interpolation below the last bit of the result. */
    int64_t low = step < 0 ? (INT64_C(1) << 20) >> -step : (INT64_C(1) << 20) << step;
    int64_t part = above - step * DOUBLING_MILLIKELVIN;
    return (int32_t)((low + low * part / DOUBLING_MILLIKELVIN) >> (20 - WARMTH_BITS));
}

int64_t self_discharge_minute_nanocoulombs(struct self_discharge *d, int32_t warmth_q8)
{
    int64_t divisor = (int64_t)MONTH_MINUTES << WARMTH_BITS;
    /* A month's loss is below 2^54; split so that the product with the warmth fits. */
    int64_t whole = d->loss_per_month_nanocoulombs / divisor;
    int64_t rest = d->loss_per_month_nanocoulombs % divisor;
    int64_t scaled = rest * warmth_q8 + d->remainder_nanocoulombs;
    d->remainder_nanocoulombs = scaled % divisor;
    return whole * warmth_q8 + scaled / divisor;
}
