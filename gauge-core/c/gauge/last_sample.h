/* The last plausible sample, in counts and converted (G7, G8). */
#ifndef GAUGE_GAUGE_LAST_SAMPLE_H
#define GAUGE_GAUGE_LAST_SAMPLE_H

#include <stdint.h>

struct last_sample {
    int32_t shunt_counts;
    int32_t voltage_counts;
    int32_t current_microamps;
    int32_t voltage_microvolts;
    int32_t temperature_millicelsius;
};

#endif
