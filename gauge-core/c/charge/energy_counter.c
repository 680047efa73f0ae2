#include "charge/energy_counter.h"

#include "fixed/fixed_math.h"

#define PICOJOULES_PER_MICROJOULE 1000000

static int64_t total(int64_t microjoules, int64_t picojoules)
{
    int64_t whole = picojoules / PICOJOULES_PER_MICROJOULE;
    return whole > INT64_MAX - microjoules ? INT64_MAX : microjoules + whole;
}

void energy_counter_fold(struct energy_counter *e)
{
    if (e->in_picojoules > ENERGY_FOLD_ABOVE_PICOJOULES) {
        e->in_microjoules = total(e->in_microjoules, e->in_picojoules);
        e->in_picojoules %= PICOJOULES_PER_MICROJOULE;
    }
    if (e->out_picojoules > ENERGY_FOLD_ABOVE_PICOJOULES) {
        e->out_microjoules = total(e->out_microjoules, e->out_picojoules);
        e->out_picojoules %= PICOJOULES_PER_MICROJOULE;
    }
}

void energy_counter_resume(struct energy_counter *e, int64_t in_microjoules,
                           int64_t out_microjoules)
{
    e->in_microjoules = max_int64(in_microjoules, 0);
    e->out_microjoules = max_int64(out_microjoules, 0);
    e->in_picojoules = 0;
    e->out_picojoules = 0;
}

int64_t energy_counter_in_microjoules(const struct energy_counter *e)
{
    return total(e->in_microjoules, e->in_picojoules);
}

int64_t energy_counter_out_microjoules(const struct energy_counter *e)
{
    return total(e->out_microjoules, e->out_picojoules);
}
