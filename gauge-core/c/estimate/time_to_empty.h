/*
 * Hours left (T2 to T5): at the filtered current, with a low and a high end from the band, at the
 * current of this moment, and at the usual use of the last 24 hours.
 */
#ifndef GAUGE_ESTIMATE_TIME_TO_EMPTY_H
#define GAUGE_ESTIMATE_TIME_TO_EMPTY_H

#include <stdbool.h>
#include <stdint.h>

#include "estimate/load_filter.h"
#include "estimate/rate_model.h"
#include "port/codes.h"
#include "settings/gauge_settings.h"

/* One answer: its kind and its whole minutes, 0 where there is none. */
struct time_answer {
    enum estimate_state state;
    int32_t minutes;
};

/* What the estimates rest on, all of one instant. */
struct estimate_input {
    int64_t charge_nanocoulombs;
    int64_t low_nanocoulombs;
    int64_t high_nanocoulombs;
    int32_t present_microamps;
    int32_t temperature_millicelsius;
    bool known;
};

struct time_to_empty {
    int64_t offset_bound_microamps;
    int64_t kept_back_nanocoulombs;
    int32_t longest_minutes;
    struct time_answer at_filtered_load;
    struct time_answer low;
    struct time_answer high;
    struct time_answer at_this_load;
    struct time_answer at_usual_use;
};

void time_to_empty_init(struct time_to_empty *t, const struct gauge_settings *settings);

void time_to_empty_update(struct time_to_empty *t, const struct estimate_input *input,
                          const struct load_filter *filter, const struct rate_model *model);

#endif
