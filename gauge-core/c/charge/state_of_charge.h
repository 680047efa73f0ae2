/* Charge as a part of the capacity (arithmetic.md, stage 7). */
#ifndef GAUGE_CHARGE_STATE_OF_CHARGE_H
#define GAUGE_CHARGE_STATE_OF_CHARGE_H

#include <stdint.h>

#include "fixed/fixed_math.h"

#define FULL_PPM 1000000

/* derived: 1 mAh = 3.6e9 nC */
#define NANOCOULOMBS_PER_MILLIAMP_HOUR INT64_C(3600000000)

/* Rounded down; divides by a millionth of the capacity, as charge x 1e6 would overflow. */
static inline int32_t state_of_charge_ppm(int64_t charge_nanocoulombs,
                                          int64_t capacity_nanocoulombs)
{
    return (int32_t)min_int64(charge_nanocoulombs / (capacity_nanocoulombs / FULL_PPM), FULL_PPM);
}

/* The charge of a part of the capacity. */
static inline int64_t state_of_charge_nanocoulombs(int64_t ppm, int64_t capacity_nanocoulombs)
{
    return capacity_nanocoulombs / FULL_PPM * ppm;
}

#endif
