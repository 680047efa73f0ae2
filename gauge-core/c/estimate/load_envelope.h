/*
 * Between which currents the load has been: lowest and highest of up to 60 minute means, widened
 * by a quarter and by a margin (T1). After a new load only what came after it is looked at.
 */
#ifndef GAUGE_ESTIMATE_LOAD_ENVELOPE_H
#define GAUGE_ESTIMATE_LOAD_ENVELOPE_H

#include <stdint.h>

#define ENVELOPE_MINUTES 60

struct load_envelope {
    int64_t margin_microamps;
    /* The ends, and widened, worked out when something was added. */
    int32_t lowest_microamps;
    int32_t highest_microamps;
    int64_t low_microamps;
    int64_t high_microamps;
    /* A ring of minute means, newest before the next index. */
    int32_t mean_microamps[ENVELOPE_MINUTES];
    int32_t count;
    int32_t next_index;
    int32_t look_back_minutes;
};

void load_envelope_init(struct load_envelope *envelope, int64_t margin_microamps);

/* Adds a level; while looking back less than an hour, the look grows with each. */
void load_envelope_add(struct load_envelope *envelope, int32_t microamps);

/* From here on only this level and what comes after it is looked at. */
void load_envelope_start_from(struct load_envelope *envelope, int32_t microamps);

void load_envelope_look_at_the_whole_hour(struct load_envelope *envelope);

#endif
