/*
 * A value that the gauge works out by itself, beside the declared one (C4): it moves only when two
 * results in a row agree, by a quarter of the difference, within limits.
 */
#ifndef GAUGE_RULES_MEASURED_VALUE_H
#define GAUGE_RULES_MEASURED_VALUE_H

#include <stdbool.h>
#include <stdint.h>

struct measured_value {
    /* Parameters. */
    int64_t declared;
    int64_t lowest;
    int64_t highest;
    int64_t longest_step;
    int64_t agreement;
    /* State; 0 while there is none. */
    int64_t measured;
    int64_t candidate;
};

/* Takes one result fit for use as evidence; answers whether the measured value moved. */
bool measured_value_offer(struct measured_value *value, int64_t result);

void measured_value_forget(struct measured_value *value);

void measured_value_resume(struct measured_value *value, int64_t measured, int64_t candidate);

#endif
