/*
 * What part of a whole minute's net charge is stored (G3): a net discharge as it is, a net charge
 * times the efficiency, rounded down with the remainder carried.
 */
#ifndef GAUGE_CHARGE_COULOMBIC_EFFICIENCY_H
#define GAUGE_CHARGE_COULOMBIC_EFFICIENCY_H

#include <stdint.h>

#include "fixed/fixed_math.h"

struct coulombic_efficiency {
    int32_t efficiency_q16;
    int32_t remainder_q16;
};

static inline void coulombic_efficiency_init(struct coulombic_efficiency *e, int64_t efficiency_ppm)
{
    /* derived: 65536 is exactly 1.0, so 100 % changes nothing */
    e->efficiency_q16 = (int32_t)divide_half_away_from_zero(efficiency_ppm * 65536, 1000000);
    e->remainder_q16 = 0;
}

/* The part that would count if the minute ended now; changes nothing. */
static inline int64_t coulombic_efficiency_preview(const struct coulombic_efficiency *e,
                                                   int64_t net_nanocoulombs)
{
    return net_nanocoulombs <= 0
               ? net_nanocoulombs
               : scale_q16_floor(net_nanocoulombs, e->efficiency_q16, e->remainder_q16);
}

/* The stored part of a minute; |net| up to 2^47 nC. */
static inline int64_t coulombic_efficiency_settle(struct coulombic_efficiency *e,
                                                  int64_t net_nanocoulombs)
{
    int64_t stored = coulombic_efficiency_preview(e, net_nanocoulombs);
    if (net_nanocoulombs > 0) {
        e->remainder_q16 =
            scale_q16_remainder(net_nanocoulombs, e->efficiency_q16, e->remainder_q16);
    }
    return stored;
}

/* Only the 16 low bits of what was saved are taken. */
static inline void coulombic_efficiency_resume(struct coulombic_efficiency *e,
                                               int32_t saved_remainder_q16)
{
    e->remainder_q16 = (int32_t)((uint32_t)saved_remainder_q16 & 0xFFFFu);
}

#endif
