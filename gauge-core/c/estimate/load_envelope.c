#include "estimate/load_envelope.h"

#include "fixed/fixed_math.h"

void load_envelope_init(struct load_envelope *e, int64_t margin_microamps)
{
    *e = (struct load_envelope){0};
    e->margin_microamps = margin_microamps;
    e->look_back_minutes = ENVELOPE_MINUTES;
}

/* 2^31 x 5/4 plus a margin of at most 2^40 stays far below 2^63. */
static void widen(struct load_envelope *e)
{
    int32_t lowest = INT32_MAX;
    int32_t highest = INT32_MIN;
    int32_t looked = min_int32(e->count, e->look_back_minutes);
    int32_t index = e->next_index;
    for (int32_t i = 0; i < looked; i++) {
        index = index == 0 ? ENVELOPE_MINUTES - 1 : index - 1;
        lowest = min_int32(lowest, e->mean_microamps[index]);
        highest = max_int32(highest, e->mean_microamps[index]);
    }
    int64_t low = lowest;
    int64_t high = highest;
    e->low_microamps = low - magnitude(low) / 4 - e->margin_microamps;
    e->high_microamps = high + magnitude(high) / 4 + e->margin_microamps;
}

void load_envelope_add(struct load_envelope *e, int32_t microamps)
{
    e->mean_microamps[e->next_index] = microamps;
    e->next_index = e->next_index + 1 == ENVELOPE_MINUTES ? 0 : e->next_index + 1;
    e->count = min_int32(e->count + 1, ENVELOPE_MINUTES);
    e->look_back_minutes = min_int32(e->look_back_minutes + 1, ENVELOPE_MINUTES);
    widen(e);
}

void load_envelope_start_from(struct load_envelope *e, int32_t microamps)
{
    e->look_back_minutes = 0;
    load_envelope_add(e, microamps);
}

void load_envelope_look_at_the_whole_hour(struct load_envelope *e)
{
    e->look_back_minutes = ENVELOPE_MINUTES;
    widen(e);
}
