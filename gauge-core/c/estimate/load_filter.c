#include "estimate/load_filter.h"

/* 9/32 of the difference every 5 s is a time constant of 15.1 s. */
#define FAST_PART_Q5 9
#define FAST_SHIFT 5u
#define FRACTION_BITS 8u

/* 45 s for a heavier load, 180 s for a lighter one, 45 s to come back within an hour. */
#define HEAVIER_SLOTS 9
#define LIGHTER_SLOTS 36
#define RETURN_SLOTS 9
#define REMEMBERED_SLOTS 720

/* Margin of the envelope: capacity over 500 h, 0.2 A at 100 Ah. */
#define MARGIN_DIVISOR_MILLIS INT64_C(1800000000)
#define MINUTES_PER_HOUR 60

void load_filter_init(struct load_filter *f, int64_t capacity_nanocoulombs,
                      int32_t averaging_minutes)
{
    *f = (struct load_filter){.slot_millis = 0};
    load_envelope_init(&f->envelope, max_int64(1, capacity_nanocoulombs / MARGIN_DIVISOR_MILLIS));
    f->averaging_minutes = (int32_t)clamp(averaging_minutes, 1, FILTER_LONGEST_AVERAGING_MINUTES);
}

static int32_t fast_microamps(const struct load_filter *f)
{
    return (int32_t)shift_right_floor(f->fast_microamps_q8, FRACTION_BITS);
}

static void restart(struct load_filter *f)
{
    f->minutes = 0;
    f->next_index = 0;
    f->minutes_sum_microamps = 0;
    f->minute_is_mixed = true;
}

static void push(struct load_filter *f, int32_t mean_microamps)
{
    if (f->minutes == f->averaging_minutes) {
        f->minutes_sum_microamps -= f->minute_microamps[f->next_index];
    } else {
        f->minutes++;
    }
    f->minute_microamps[f->next_index] = mean_microamps;
    f->minutes_sum_microamps += mean_microamps;
    f->next_index = f->next_index + 1 == f->averaging_minutes ? 0 : f->next_index + 1;
}

static void end_one_off(struct load_filter *f)
{
    f->remembered_slots = 0;
    f->return_slots = 0;
    f->heavier_slots = 0;
    f->lighter_slots = 0;
    load_envelope_look_at_the_whole_hour(&f->envelope);
}

/* Counts the time inside the old envelope; restores the old mean when it was long enough. */
static bool came_back(struct load_filter *f)
{
    if (f->remembered_slots == 0) {
        return false;
    }
    f->remembered_slots--;
    int32_t fast = fast_microamps(f);
    bool inside = fast >= f->remembered_low_microamps && fast <= f->remembered_high_microamps;
    f->return_slots = inside ? f->return_slots + 1 : 0;
    if (f->return_slots == RETURN_SLOTS) {
        restart(f);
        for (int32_t i = 0; i < f->remembered_minutes; i++) {
            push(f, f->remembered_microamps);
        }
        end_one_off(f);
        return true;
    }
    if (f->remembered_slots == 0) {
        end_one_off(f);
    }
    /* Inside, the watch for a new load pauses: a larger step passes through on its way. */
    return inside;
}

static void take_over(struct load_filter *f, int32_t fast)
{
    if (f->remembered_slots == 0) {
        /* A second new load within the hour leaves what the first one interrupted. */
        f->remembered_slots = REMEMBERED_SLOTS;
        f->remembered_microamps = f->mean_before_microamps;
        f->remembered_minutes = f->before_minutes;
        f->remembered_low_microamps = f->envelope.low_microamps;
        f->remembered_high_microamps = f->envelope.high_microamps;
        load_envelope_start_from(&f->envelope, fast);
    } else {
        load_envelope_add(&f->envelope, fast);
    }
    f->heavier_slots = 0;
    f->lighter_slots = 0;
    f->return_slots = 0;
    restart(f);
}

static void watch_for_new_load(struct load_filter *f)
{
    int32_t fast = fast_microamps(f);
    bool heavier = fast < f->envelope.low_microamps;
    bool lighter = fast > f->envelope.high_microamps;
    if ((heavier || lighter) && f->heavier_slots + f->lighter_slots == 0) {
        f->mean_before_microamps = load_filter_microamps(f);
        f->before_minutes = max_int32(1, f->minutes);
    }
    f->heavier_slots = heavier ? f->heavier_slots + 1 : 0;
    f->lighter_slots = lighter ? f->lighter_slots + 1 : 0;
    if (f->heavier_slots == HEAVIER_SLOTS || f->lighter_slots == LIGHTER_SLOTS) {
        take_over(f, fast);
    }
}

static void add_slot(struct rolling_minute *r, int32_t mean_microamps)
{
    r->sum_microamps += (int64_t)mean_microamps - r->slot_microamps[r->next_index];
    r->slot_microamps[r->next_index] = mean_microamps;
    r->next_index = r->next_index + 1 == FILTER_SLOTS_IN_A_MINUTE ? 0 : r->next_index + 1;
    r->count = min_int32(r->count + 1, FILTER_SLOTS_IN_A_MINUTE);
}

/* Differences below 2^41, times 9 below 2^45; the shift takes the floor. */
static void close_slot(struct load_filter *f, int32_t mean_microamps)
{
    add_slot(&f->rolling, mean_microamps);
    int64_t input_q8 = (int64_t)mean_microamps * 256;
    if (!f->fast_seeded) {
        f->fast_seeded = true;
        f->fast_microamps_q8 = input_q8;
    }
    f->fast_microamps_q8 +=
        shift_right_floor((input_q8 - f->fast_microamps_q8) * FAST_PART_Q5, FAST_SHIFT);
    if (f->seeded && !came_back(f)) {
        watch_for_new_load(f);
    }
}

void load_filter_add_to_the_end(struct load_filter *f, int32_t current_microamps, int32_t millis)
{
    int32_t left = millis;
    while (left >= FILTER_SLOT_MILLIS - f->slot_millis) {
        int32_t part = FILTER_SLOT_MILLIS - f->slot_millis;
        f->slot_nanocoulombs += (int64_t)current_microamps * part;
        left -= part;
        int32_t mean = clamp_to_int32(f->slot_nanocoulombs / FILTER_SLOT_MILLIS);
        f->slot_nanocoulombs = 0;
        f->slot_millis = 0;
        close_slot(f, mean);
    }
    f->slot_nanocoulombs += (int64_t)current_microamps * left;
    f->slot_millis += left;
}

static void usual_use_add_minute(struct usual_use *u, int32_t mean_microamps)
{
    u->part_hour_microamp_minutes += max_int64(0, -(int64_t)mean_microamps);
    u->part_hour_minutes++;
    if (u->part_hour_minutes == MINUTES_PER_HOUR) {
        u->whole_hours_microamp_minutes +=
            u->part_hour_microamp_minutes - u->hour_microamp_minutes[u->next_index];
        u->hour_microamp_minutes[u->next_index] = u->part_hour_microamp_minutes;
        u->next_index = u->next_index + 1 == USUAL_USE_HOURS ? 0 : u->next_index + 1;
        u->whole_hours = min_int32(u->whole_hours + 1, USUAL_USE_HOURS);
        u->part_hour_microamp_minutes = 0;
        u->part_hour_minutes = 0;
    }
}

void load_filter_close_minute(struct load_filter *f, int32_t mean_microamps)
{
    usual_use_add_minute(&f->usual, mean_microamps);
    bool mixed = f->minute_is_mixed;
    f->minute_is_mixed = false;
    if (mixed) {
        return;
    }
    push(f, mean_microamps);
    /* Frozen while timing: a load that is being judged does not make room for itself. */
    if (!f->seeded || f->heavier_slots + f->lighter_slots == 0) {
        load_envelope_add(&f->envelope, mean_microamps);
    }
    f->seeded = true;
}

void load_filter_abandon_minute(struct load_filter *f)
{
    f->slot_nanocoulombs = 0;
    f->slot_millis = 0;
}

int32_t load_filter_microamps(const struct load_filter *f)
{
    return clamp_to_int32(f->minutes == 0
                              ? divide_half_away_from_zero(f->fast_microamps_q8, 256)
                              : divide_half_away_from_zero(f->minutes_sum_microamps, f->minutes));
}

int64_t load_filter_microamps_q8(const struct load_filter *f)
{
    return f->minutes == 0 ? f->fast_microamps_q8 : f->minutes_sum_microamps * 256 / f->minutes;
}

int32_t load_filter_one_minute_microamps(const struct load_filter *f)
{
    return f->rolling.count == 0 ? 0 : (int32_t)(f->rolling.sum_microamps / f->rolling.count);
}

int32_t load_filter_usual_microamps(const struct load_filter *f)
{
    if (f->usual.whole_hours == 0) {
        return 0;
    }
    int64_t minutes = (int64_t)f->usual.whole_hours * MINUTES_PER_HOUR;
    return (int32_t)min_int64(f->usual.whole_hours_microamp_minutes / minutes, INT32_MAX);
}
