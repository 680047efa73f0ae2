/* Arithmetic on parts per million of the capacity, rounded and limited to the safe side. */
#ifndef GAUGE_BAND_PARTS_H
#define GAUGE_BAND_PARTS_H

#include <stdint.h>

#include "fixed/fixed_math.h"

/* Everything is possible. */
#define BAND_WHOLE_PPM 1000000

/* A part of a value, rounded up; value limited to 2^43, with at most 500,000 ppm below 2^62. */
static inline int64_t parts_ratio(int64_t value, int64_t ppm)
{
    return (min_int64(value, INT64_C(1) << 43) * ppm + 999999) / 1000000;
}

/* A charge, 0 or more, as a part of a capacity, cut off. */
static inline int64_t parts_floor(int64_t nanocoulombs, int64_t milliamp_hours)
{
    return nanocoulombs / (milliamp_hours * 3600);
}

/* The same, rounded up. */
static inline int64_t parts_ceiling(int64_t nanocoulombs, int64_t milliamp_hours)
{
    return -floor_divide(-nanocoulombs, milliamp_hours * 3600);
}

static inline int64_t parts_limited(int64_t ppm)
{
    return min_int64(ppm, BAND_WHOLE_PPM);
}

/* Limited first: a term as large as the capacity says as much as a larger one. */
static inline int64_t parts_square(int64_t ppm)
{
    int64_t term = parts_limited(ppm);
    return term * term;
}

#endif
