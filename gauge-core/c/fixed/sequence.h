/* Sequence numbers of 32 bits that wrap; compared by their difference. */
#ifndef GAUGE_FIXED_SEQUENCE_H
#define GAUGE_FIXED_SEQUENCE_H

#include <stdbool.h>
#include <stdint.h>

/*
 * Whether one number was given out after another: right while the two are less than 2^31 apart.
 * The difference wraps modulo 2^32 on purpose; exactly 2^31 apart both orders answer false.
 */
static inline bool sequence_is_newer(uint32_t candidate, uint32_t reference)
{
    uint32_t ahead = candidate - reference;
    return ahead != 0 && ahead <= (uint32_t)INT32_MAX;
}

#endif
