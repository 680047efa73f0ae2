/* Rounding, scaling and narrowing on plain integers, each with its rounding said in the name. */
#ifndef GAUGE_FIXED_FIXED_MATH_H
#define GAUGE_FIXED_FIXED_MATH_H

#include <stdbool.h>
#include <stdint.h>

/* 2^62: one more addend of that size, or a negative, still fits. */
#define FIXED_LARGEST_SUM (INT64_C(1) << 62)

/*
 * The bits of a word read as two's complement. A cast does the same on every compiler of today,
 * but C leaves it to the implementation; this is defined, and compiles to nothing.
 */
static inline int64_t int64_from_bits(uint64_t bits)
{
    return bits <= (uint64_t)INT64_MAX ? (int64_t)bits : -(int64_t)(~bits) - 1;
}

static inline int32_t int32_from_bits(uint32_t bits)
{
    return bits <= (uint32_t)INT32_MAX ? (int32_t)bits : -(int32_t)(~bits) - 1;
}

/* Sums that may pass the end of their width on purpose. */
static inline int64_t wrapping_add(int64_t one, int64_t other)
{
    return int64_from_bits((uint64_t)one + (uint64_t)other);
}

static inline int64_t wrapping_subtract(int64_t one, int64_t other)
{
    return int64_from_bits((uint64_t)one - (uint64_t)other);
}

/* Right shift that takes the floor, also below zero, where C leaves the result open. */
static inline int64_t shift_right_floor(int64_t value, unsigned shift)
{
    return value >= 0 ? value >> shift : ~(~value >> shift);
}

/* Division that takes the floor; C's own cuts off toward zero. The divisor is above zero. */
static inline int64_t floor_divide(int64_t numerator, int64_t denominator)
{
    int64_t quotient = numerator / denominator;
    return numerator % denominator < 0 ? quotient - 1 : quotient;
}

static inline int64_t min_int64(int64_t one, int64_t other)
{
    return one < other ? one : other;
}

static inline int64_t max_int64(int64_t one, int64_t other)
{
    return one > other ? one : other;
}

static inline int32_t min_int32(int32_t one, int32_t other)
{
    return one < other ? one : other;
}

static inline int32_t max_int32(int32_t one, int32_t other)
{
    return one > other ? one : other;
}

/* Any value but -2^63, whose magnitude does not exist. */
static inline int64_t magnitude(int64_t value)
{
    return value < 0 ? -value : value;
}

/* Into a closed interval; low is at most high. */
static inline int64_t clamp(int64_t value, int64_t low, int64_t high)
{
    if (value < low) {
        return low;
    }
    return value > high ? high : value;
}

/* Narrows to 32 bits; symmetric, so that the result's negative exists. */
static inline int32_t clamp_to_int32(int64_t value)
{
    return (int32_t)clamp(value, -INT32_MAX, INT32_MAX);
}

/*
 * Halves away from zero, so that a charge and an equal discharge round alike.
 * |numerator| up to 2^62, denominator 1 to 2^62.
 */
static inline int64_t divide_half_away_from_zero(int64_t numerator, int64_t denominator)
{
    int64_t quotient = numerator / denominator;
    int64_t doubled_remainder = 2 * (numerator - quotient * denominator);
    if (doubled_remainder >= denominator) {
        return quotient + 1;
    }
    return doubled_remainder <= -denominator ? quotient - 1 : quotient;
}

/*
 * floor((value x factor + carry) / 65536), the product split so that it cannot overflow.
 * |value| at most 2^61, factor 0 to 65536 (1.0), carry 0 to 65535.
 */
static inline int64_t scale_q16_floor(int64_t value, int32_t factor_q16, int32_t carry_q16)
{
    int64_t high = shift_right_floor(value, 16);
    int64_t low = (int64_t)((uint64_t)value & 0xFFFFu);
    return high * factor_q16 + ((low * factor_q16 + carry_q16) >> 16);
}

/* What scale_q16_floor cut off, 0 to 65535: who carries it loses nothing. */
static inline int32_t scale_q16_remainder(int64_t value, int32_t factor_q16, int32_t carry_q16)
{
    int64_t low = (int64_t)((uint64_t)value & 0xFFFFu);
    return (int32_t)((low * factor_q16 + carry_q16) & 0xFFFF);
}

/* Adds and saturates at +-2^62; both at most that in magnitude. */
int64_t saturating_add(int64_t sum, int64_t addend);

/* Multiplies two magnitudes, 0 or more of any size; at most 2^62. */
int64_t saturating_product(int64_t one, int64_t other);

/*
 * A magnitude grown in a ratio, rounded up: value x new / old, saturating at 2^62.
 * Value 0 to 2^62, figures below 2^31, the new one at least the old one.
 */
int64_t grown(int64_t value, int64_t old_figure, int64_t new_figure);

/* The place of the highest bit that is set, 0 to 63; 0 for 0. */
uint32_t highest_bit(uint64_t value);

/* The smallest root with root x root >= value; value 0 to 2^62. No division. */
int64_t square_root_ceiling(int64_t value);

#endif
