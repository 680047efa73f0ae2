#include "estimate/load_envelope.h"

#include "fixed/fixed_math.h"

static void forget_ends(struct load_envelope *e)
{
    e->lowest_microamps = INT32_MAX;
    e->highest_microamps = INT32_MIN;
}

static void include(struct load_envelope *e, int32_t microamps)
{
    e->lowest_microamps = min_int32(e->lowest_microamps, microamps);
    e->highest_microamps = max_int32(e->highest_microamps, microamps);
}

void load_envelope_init(struct load_envelope *e, int64_t margin_microamps)
{
    *e = (struct load_envelope){0};
    e->margin_microamps = margin_microamps;
    e->look_back_minutes = ENVELOPE_MINUTES;
    forget_ends(e);
}

/* Only where an end is lost: sixty looks are more than all else in a minute. */
static void look_at_all(struct load_envelope *e)
{
    int32_t looked = min_int32(e->count, e->look_back_minutes);
    int32_t index = e->next_index;
    forget_ends(e);
    for (int32_t i = 0; i < looked; i++) {
        index = index == 0 ? ENVELOPE_MINUTES - 1 : index - 1;
        include(e, e->mean_microamps[index]);
    }
}

/* 2^31 x 5/4 plus a margin of at most 2^40 stays far below 2^63. */
static void widen(struct load_envelope *e)
{
    int64_t low = e->lowest_microamps;
    int64_t high = e->highest_microamps;
    e->low_microamps = low - magnitude(low) / 4 - e->margin_microamps;
    e->high_microamps = high + magnitude(high) / 4 + e->margin_microamps;
}

void load_envelope_add(struct load_envelope *e, int32_t microamps)
{
    bool one_leaves = e->count == ENVELOPE_MINUTES && e->look_back_minutes == ENVELOPE_MINUTES;
    int32_t leaving = e->mean_microamps[e->next_index];
    e->mean_microamps[e->next_index] = microamps;
    e->next_index = e->next_index + 1 == ENVELOPE_MINUTES ? 0 : e->next_index + 1;
    e->count = min_int32(e->count + 1, ENVELOPE_MINUTES);
    e->look_back_minutes = min_int32(e->look_back_minutes + 1, ENVELOPE_MINUTES);
    if (one_leaves && ((leaving == e->lowest_microamps && microamps > leaving) ||
                       (leaving == e->highest_microamps && microamps < leaving))) {
        look_at_all(e);
    } else {
        include(e, microamps);
    }
    widen(e);
}

void load_envelope_start_from(struct load_envelope *e, int32_t microamps)
{
    e->look_back_minutes = 0;
    forget_ends(e);
    load_envelope_add(e, microamps);
}

void load_envelope_look_at_the_whole_hour(struct load_envelope *e)
{
    e->look_back_minutes = ENVELOPE_MINUTES;
    look_at_all(e);
    widen(e);
}
