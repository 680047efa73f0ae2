#include "fixed/scale_factor.h"

/* multiplier x limit + 2^(shift-1) <= 2^63 - 1, all above zero, without forming the product. */
static bool fits(int64_t multiplier, int64_t input_limit, uint32_t shift)
{
    return multiplier <= (INT64_MAX - (INT64_C(1) << (shift - 1))) / input_limit;
}

void scale_factor_init(struct scale_factor *f, int64_t numerator, int64_t denominator,
                       int64_t input_limit)
{
    /* Long division, bit by bit: quotient = numerator x 2^shift / denominator. */
    int64_t quotient = numerator / denominator;
    int64_t remainder = numerator % denominator;
    uint32_t shift = 0;
    while (shift < 62) {
        int64_t doubled_remainder = remainder * 2;
        int64_t bit = doubled_remainder >= denominator ? 1 : 0;
        int64_t next = quotient * 2 + bit;
        /* +1: the final rounding may add one unit to the multiplier. */
        if (!fits(next + 1, input_limit, shift + 1)) {
            break;
        }
        quotient = next;
        remainder = doubled_remainder - (bit == 1 ? denominator : 0);
        shift++;
    }
    if (remainder * 2 >= denominator) {
        quotient++;
    }
    f->multiplier = quotient;
    f->shift = shift;
    f->rounding_half = shift == 0 ? 0 : INT64_C(1) << (shift - 1);
    f->input_limit = input_limit;
}
