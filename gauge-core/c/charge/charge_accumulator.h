/*
 * The count (G2 to G5). Microamps times milliseconds are nanocoulombs, exactly; each whole minute
 * is settled through the efficiency and the clamps, which act on the minute's net.
 */
#ifndef GAUGE_CHARGE_CHARGE_ACCUMULATOR_H
#define GAUGE_CHARGE_CHARGE_ACCUMULATOR_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/coulombic_efficiency.h"

struct charge_accumulator {
    /* Parameters. */
    int64_t capacity_nanocoulombs;
    int64_t unproven_limit_nanocoulombs;
    int64_t own_supply_microamps;
    /* State. */
    int64_t settled_nanocoulombs;
    int64_t minute_nanocoulombs;
    int64_t in_nanocoulombs;
    int64_t out_nanocoulombs;
    int64_t surplus_nanocoulombs;
    int64_t deficit_nanocoulombs;
    struct coulombic_efficiency efficiency;
    bool full_proven;
};

/* An empty count. Capacity 3.6e11 to 3.6e16 nC. */
void charge_accumulator_init(struct charge_accumulator *c, int64_t capacity_nanocoulombs,
                             int64_t efficiency_ppm, int64_t own_supply_microamps);

/* Sums of what only grows, both 0 or more; held at 2^63 - 1. */
static inline int64_t charge_saturating_add(int64_t sum, int64_t addend)
{
    return addend > INT64_MAX - sum ? INT64_MAX : sum + addend;
}

/* Adds a stretch of the minute under way; at most 2^31 x 60,000 = 2^47 nC in a minute. */
static inline void charge_accumulator_add(struct charge_accumulator *c, int32_t current_microamps,
                                          int32_t millis)
{
    int64_t nanocoulombs = (int64_t)current_microamps * millis;
    c->minute_nanocoulombs += nanocoulombs - c->own_supply_microamps * millis;
    if (nanocoulombs > 0) {
        c->in_nanocoulombs = charge_saturating_add(c->in_nanocoulombs, nanocoulombs);
    } else {
        c->out_nanocoulombs = charge_saturating_add(c->out_nanocoulombs, -nanocoulombs);
    }
}

/* 99 % until full is proven; a count that is already above it is not pulled down (G4). */
static inline int64_t charge_accumulator_upper_limit(const struct charge_accumulator *c)
{
    return c->full_proven ? c->capacity_nanocoulombs
                          : max_int64(c->unproven_limit_nanocoulombs, c->settled_nanocoulombs);
}

/* The count, the minute under way included: what settling would give at this instant (G5). */
static inline int64_t charge_accumulator_charge(const struct charge_accumulator *c)
{
    return clamp(c->settled_nanocoulombs +
                     coulombic_efficiency_preview(&c->efficiency, c->minute_nanocoulombs),
                 0, charge_accumulator_upper_limit(c));
}

static inline bool charge_accumulator_is_at_upper_limit(const struct charge_accumulator *c)
{
    return c->settled_nanocoulombs >= charge_accumulator_upper_limit(c);
}

/*
 * Settles the minute under way. What was lost inside the battery (G23), 0 or more, is taken off
 * unless it would turn into a deficit.
 */
void charge_accumulator_settle_minute(struct charge_accumulator *c, int64_t lost_nanocoulombs);

/*
 * Sets the count, clamped to 0 to capacity; the minute under way is settled first, surplus and
 * deficit start again. Answers by how much the count moved.
 */
int64_t charge_accumulator_set_to(struct charge_accumulator *c, int64_t nanocoulombs, bool proven);

/* Takes over a count that was saved, or that a change of settings carried over. */
void charge_accumulator_resume(struct charge_accumulator *c, int64_t nanocoulombs, bool proven,
                               int64_t surplus_nanocoulombs, int64_t deficit_nanocoulombs);

/* Takes over the sums through the shunt. */
void charge_accumulator_resume_sums(struct charge_accumulator *c, int64_t in_nanocoulombs,
                                    int64_t out_nanocoulombs, int32_t remainder_q16);

#endif
