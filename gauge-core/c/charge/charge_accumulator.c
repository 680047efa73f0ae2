#include "charge/charge_accumulator.h"

void charge_accumulator_init(struct charge_accumulator *c, int64_t capacity_nanocoulombs,
                             int64_t efficiency_ppm, int64_t own_supply_microamps)
{
    *c = (struct charge_accumulator){0};
    c->capacity_nanocoulombs = capacity_nanocoulombs;
    c->unproven_limit_nanocoulombs = capacity_nanocoulombs / 100 * 99;
    c->own_supply_microamps = own_supply_microamps;
    coulombic_efficiency_init(&c->efficiency, efficiency_ppm);
}

void charge_accumulator_settle_minute(struct charge_accumulator *c, int64_t lost_nanocoulombs)
{
    int64_t target = c->settled_nanocoulombs +
                     coulombic_efficiency_settle(&c->efficiency, c->minute_nanocoulombs);
    target -= min_int64(lost_nanocoulombs, max_int64(target, 0));
    c->minute_nanocoulombs = 0;
    c->settled_nanocoulombs = clamp(target, 0, charge_accumulator_upper_limit(c));
    int64_t cut_off = target - c->settled_nanocoulombs;
    if (cut_off > 0) {
        c->surplus_nanocoulombs = charge_saturating_add(c->surplus_nanocoulombs, cut_off);
    } else {
        c->deficit_nanocoulombs = charge_saturating_add(c->deficit_nanocoulombs, -cut_off);
    }
}

int64_t charge_accumulator_set_to(struct charge_accumulator *c, int64_t nanocoulombs, bool proven)
{
    charge_accumulator_settle_minute(c, 0);
    int64_t before = c->settled_nanocoulombs;
    c->settled_nanocoulombs = clamp(nanocoulombs, 0, c->capacity_nanocoulombs);
    c->full_proven = proven;
    c->surplus_nanocoulombs = 0;
    c->deficit_nanocoulombs = 0;
    return c->settled_nanocoulombs - before;
}

void charge_accumulator_resume(struct charge_accumulator *c, int64_t nanocoulombs, bool proven,
                               int64_t surplus_nanocoulombs, int64_t deficit_nanocoulombs)
{
    (void)charge_accumulator_set_to(c, nanocoulombs, proven);
    c->surplus_nanocoulombs = max_int64(surplus_nanocoulombs, 0);
    c->deficit_nanocoulombs = max_int64(deficit_nanocoulombs, 0);
}

void charge_accumulator_resume_sums(struct charge_accumulator *c, int64_t in_nanocoulombs,
                                    int64_t out_nanocoulombs, int32_t remainder_q16)
{
    coulombic_efficiency_resume(&c->efficiency, remainder_q16);
    c->in_nanocoulombs = max_int64(in_nanocoulombs, 0);
    c->out_nanocoulombs = max_int64(out_nanocoulombs, 0);
}
