/*
 * The current on which the hours rest, aware of loads that recur (T1; arithmetic.md, stage 11): a
 * fast pole of 15 s, a slow mean of whole minutes, and the envelope of the last hour.
 */
#ifndef GAUGE_ESTIMATE_LOAD_FILTER_H
#define GAUGE_ESTIMATE_LOAD_FILTER_H

#include <stdbool.h>
#include <stdint.h>

#include "estimate/load_envelope.h"
#include "fixed/fixed_math.h"

/* How often the fast pole is evaluated; a twelfth of a minute. */
#define FILTER_SLOT_MILLIS 5000
#define FILTER_SLOTS_IN_A_MINUTE 12
#define FILTER_LONGEST_AVERAGING_MINUTES 240
#define USUAL_USE_HOURS 24

/* Mean of the last sixty seconds: a box of twelve means of five seconds. */
struct rolling_minute {
    int64_t sum_microamps;
    int32_t slot_microamps[FILTER_SLOTS_IN_A_MINUTE];
    int32_t count;
    int32_t next_index;
};

/* What is usually taken out: the discharge of the last 24 hours as hourly sums (T5). */
struct usual_use {
    int64_t hour_microamp_minutes[USUAL_USE_HOURS];
    int64_t whole_hours_microamp_minutes;
    int64_t part_hour_microamp_minutes;
    int32_t part_hour_minutes;
    int32_t whole_hours;
    int32_t next_index;
};

struct load_filter {
    struct load_envelope envelope;
    struct rolling_minute rolling;
    struct usual_use usual;
    /* The slot under way, and the fast pole. */
    int64_t slot_nanocoulombs;
    int64_t fast_microamps_q8;
    int32_t slot_millis;
    bool fast_seeded;
    /* A first minute has been seen. */
    bool seeded;
    /* The minute under way holds some of the old load and is left out. */
    bool minute_is_mixed;
    /* The slow mean, a ring of minute means since it last started. */
    int64_t minutes_sum_microamps;
    int32_t averaging_minutes;
    int32_t minutes;
    int32_t next_index;
    int32_t minute_microamps[FILTER_LONGEST_AVERAGING_MINUTES];
    /* Timing a fast pole outside the envelope, and the mean before it left. */
    int32_t heavier_slots;
    int32_t lighter_slots;
    int32_t mean_before_microamps;
    int32_t before_minutes;
    /* The one-off under way. */
    int64_t remembered_low_microamps;
    int64_t remembered_high_microamps;
    int32_t remembered_slots;
    int32_t return_slots;
    int32_t remembered_microamps;
    int32_t remembered_minutes;
};

/* A filter that has seen nothing; averaging time held to 1 to 240 minutes. */
void load_filter_init(struct load_filter *filter, int64_t capacity_nanocoulombs,
                      int32_t averaging_minutes);

/* A stretch that completes one slot or more. */
void load_filter_add_to_the_end(struct load_filter *filter, int32_t current_microamps,
                                int32_t millis);

/* Adds a stretch of current, 0 to 60,000 ms; it never crosses the end of a minute. */
static inline void load_filter_add_stretch(struct load_filter *filter, int32_t current_microamps,
                                           int32_t millis)
{
    if (millis < FILTER_SLOT_MILLIS - filter->slot_millis) {
        filter->slot_nanocoulombs += (int64_t)current_microamps * millis;
        filter->slot_millis += millis;
    } else {
        load_filter_add_to_the_end(filter, current_microamps, millis);
    }
}

/* Ends a minute whose stretches have been added. */
void load_filter_close_minute(struct load_filter *filter, int32_t mean_microamps);

/* Drops the slot under way, as the minute under way was dropped; what was learned stays. */
void load_filter_abandon_minute(struct load_filter *filter);

/* The slow mean, or the fast pole until it has a whole minute; halves away from zero. */
int32_t load_filter_microamps(const struct load_filter *filter);

/* The same in the unit of the register, cut toward zero. */
int64_t load_filter_microamps_q8(const struct load_filter *filter);

/* Mean of the last sixty seconds, toward zero; 0 before the first slot. */
int32_t load_filter_one_minute_microamps(const struct load_filter *filter);

/* Mean discharge over the whole hours seen, at most 24; 0 before the first. */
int32_t load_filter_usual_microamps(const struct load_filter *filter);

#endif
