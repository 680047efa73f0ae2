/*
 * A positive rational factor as one multiplier and one shift, chosen so that the product of the
 * largest input uses the full width of a signed 64-bit word.
 */
#ifndef GAUGE_FIXED_SCALE_FACTOR_H
#define GAUGE_FIXED_SCALE_FACTOR_H

#include <stdint.h>

#include "fixed/fixed_math.h"

struct scale_factor {
    int64_t multiplier;
    int64_t rounding_half;
    int64_t input_limit;
    uint32_t shift;
};

/*
 * Chooses multiplier and shift; cold. Numerator and denominator 1 to 2^62, input limit 1 to 2^40.
 * The factor times the input limit has to fit 63 bits, which the ranges of the settings see to.
 */
void scale_factor_init(struct scale_factor *f, int64_t numerator, int64_t denominator,
                       int64_t input_limit);

/*
 * round(input x factor), halves away from zero. Input clipped to +-input_limit; the product cannot
 * overflow by construction; symmetric about zero. The others are for who knows that nothing is
 * clipped, or that there is no sign either.
 */
static inline int64_t scale_factor_apply_to_magnitude(const struct scale_factor *f,
                                                      int64_t magnitude_in_range)
{
    return (magnitude_in_range * f->multiplier + f->rounding_half) >> f->shift;
}

static inline int64_t scale_factor_apply_in_range(const struct scale_factor *f, int64_t input)
{
    int64_t scaled = scale_factor_apply_to_magnitude(f, magnitude(input));
    return input < 0 ? -scaled : scaled;
}

static inline int64_t scale_factor_apply(const struct scale_factor *f, int64_t input)
{
    return scale_factor_apply_in_range(f, clamp(input, -f->input_limit, f->input_limit));
}

#endif
