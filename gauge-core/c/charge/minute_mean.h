/* The figures of one minute of uptime, on which every rule and filter rests (stage 9). */
#ifndef GAUGE_CHARGE_MINUTE_MEAN_H
#define GAUGE_CHARGE_MINUTE_MEAN_H

#include <stdbool.h>
#include <stdint.h>

#include "fixed/fixed_math.h"

#define MINUTE_MILLIS 60000

/* A whole minute. */
struct minute_figures {
    int64_t nanocoulombs;
    /* Halves away from zero; the mean voltage is rounded down. */
    int32_t mean_microamps;
    int32_t mean_microvolts;
    int32_t lowest_microvolts;
    int32_t highest_microvolts;
    int32_t lowest_microamps;
    int32_t highest_microamps;
    /* A stretch rested on a clipped or implausible reading: it speaks for nothing (G24). */
    bool doubtful;
};

struct minute_mean {
    /* The minute under way. */
    int64_t nanocoulombs;
    int64_t microvolt_millis;
    int32_t millis;
    int32_t lowest_microvolts;
    int32_t highest_microvolts;
    int32_t lowest_microamps;
    int32_t highest_microamps;
    bool doubtful;
    bool any_whole;
    struct minute_figures last;
};

void minute_mean_init(struct minute_mean *m);

static inline int32_t minute_mean_millis_left(const struct minute_mean *m)
{
    return MINUTE_MILLIS - m->millis;
}

/* A stretch of at most millis_left: 2^31 uA x 60,000 ms below 2^47. */
static inline void minute_mean_add(struct minute_mean *m, int32_t current_microamps,
                                   int32_t microvolts, int32_t stretch_millis)
{
    m->millis += stretch_millis;
    m->nanocoulombs += (int64_t)current_microamps * stretch_millis;
    m->microvolt_millis += (int64_t)microvolts * stretch_millis;
    m->lowest_microvolts = min_int32(m->lowest_microvolts, microvolts);
    m->highest_microvolts = max_int32(m->highest_microvolts, microvolts);
    m->lowest_microamps = min_int32(m->lowest_microamps, current_microamps);
    m->highest_microamps = max_int32(m->highest_microamps, current_microamps);
}

/* Ends the minute: its figures become the last minute's, and a new one begins. */
void minute_mean_close(struct minute_mean *m);

/* Drops the minute under way; the last whole minute stays. */
void minute_mean_abandon(struct minute_mean *m);

#endif
