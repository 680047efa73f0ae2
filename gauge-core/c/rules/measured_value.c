#include "rules/measured_value.h"

#include "fixed/fixed_math.h"

#define STEP_DIVISOR 4

bool measured_value_offer(struct measured_value *v, int64_t result)
{
    bool agrees = v->candidate != 0 && magnitude(v->candidate - result) <= v->agreement;
    int64_t mean = (v->candidate + result) / 2;
    v->candidate = result;
    if (!agrees) {
        return false;
    }
    int64_t from = v->measured == 0 ? v->declared : v->measured;
    /* The first agreeing pair moves by a quarter as well: one bad pair must not be a jump. */
    int64_t step = clamp((mean - from) / STEP_DIVISOR, -v->longest_step, v->longest_step);
    v->measured = clamp(from + step, v->lowest, v->highest);
    return true;
}

void measured_value_forget(struct measured_value *v)
{
    v->measured = 0;
    v->candidate = 0;
}

void measured_value_resume(struct measured_value *v, int64_t measured, int64_t candidate)
{
    v->measured = measured == 0 ? 0 : clamp(measured, v->lowest, v->highest);
    v->candidate = max_int64(candidate, 0);
}
