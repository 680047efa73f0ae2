/*
 * Logarithm and power of two on integers: two tables of 257 entries and a straight line between
 * neighbours. Java works the tables out when its class loads; here they are printed.
 */
#ifndef GAUGE_FIXED_LOG2_TABLE_H
#define GAUGE_FIXED_LOG2_TABLE_H

#include <stdint.h>

#define LOG2_FRACTION_BITS 24u
#define LOG2_ONE_Q24 (INT32_C(1) << 24)

/* The natural logarithm of two: 0.693147180559945 x 2^24, rounded. */
#define LOG2_LN2_Q24 INT32_C(11629080)

/*
 * log2(value) with 24 fraction bits, rounded down; value below 1 reads as 1. Wrong by at most
 * 3e-6; never falls as the value rises.
 */
int32_t log2_q24(int64_t value);

/*
 * 2^exponent with 24 fraction bits, rounded down; exponent clipped to -25 to 37. Relative error at
 * most 2e-6 from 1 upward; never falls as the exponent rises.
 */
int64_t exp2_q24(int32_t exponent_q24);

#endif
