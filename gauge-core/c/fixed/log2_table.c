#include "fixed/log2_table.h"

#include "fixed/fixed_math.h"
#include "fixed/log2_values.h"

#define INDEX_BITS 8u
#define TABLE_BITS 30u
#define SMALLEST_EXPONENT_Q24 (-25 * LOG2_ONE_Q24)
#define LARGEST_EXPONENT_Q24 (37 * LOG2_ONE_Q24)

/* The straight line between two entries, at a place with 30 fraction bits. */
static int32_t between(const int32_t *table, int64_t place_q30)
{
    int64_t index = place_q30 >> (TABLE_BITS - INDEX_BITS);
    int64_t within = place_q30 & ((INT64_C(1) << (TABLE_BITS - INDEX_BITS)) - 1);
    int64_t rise = (int64_t)table[index + 1] - table[index];
    return table[index] + (int32_t)((rise * within) >> (TABLE_BITS - INDEX_BITS));
}

int32_t log2_q24(int64_t value)
{
    uint64_t positive = value < 1 ? 1 : (uint64_t)value;
    uint32_t exponent = highest_bit(positive);
    /* The leading one is shifted out; what stays are 30 bits of mantissa. */
    uint64_t mantissa_q62 = (positive << (62 - exponent)) - (UINT64_C(1) << 62);
    int64_t mantissa_q30 = (int64_t)(mantissa_q62 >> (62 - TABLE_BITS));
    int32_t fraction = between(LOG2_LOGARITHMS_Q30, mantissa_q30);
    return (int32_t)exponent * LOG2_ONE_Q24 + (fraction >> (TABLE_BITS - LOG2_FRACTION_BITS));
}

int64_t exp2_q24(int32_t exponent_q24)
{
    int64_t clipped = clamp(exponent_q24, SMALLEST_EXPONENT_Q24, LARGEST_EXPONENT_Q24);
    int64_t whole = shift_right_floor(clipped, LOG2_FRACTION_BITS);
    /* What the floor leaves is 0 or more. */
    int64_t fraction_q30 = (clipped - whole * LOG2_ONE_Q24) << (TABLE_BITS - LOG2_FRACTION_BITS);
    int64_t mantissa_q30 = (INT64_C(1) << TABLE_BITS) + between(LOG2_POWERS_Q30, fraction_q30);
    int64_t shift = whole - (int64_t)(TABLE_BITS - LOG2_FRACTION_BITS);
    return shift >= 0 ? mantissa_q30 << shift : mantissa_q30 >> -shift;
}
