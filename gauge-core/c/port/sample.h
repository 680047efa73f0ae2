/* One reading of the converters, as raw as a driver gets it. Positive flows into the battery. */
#ifndef GAUGE_PORT_SAMPLE_H
#define GAUGE_PORT_SAMPLE_H

#include <stdint.h>

/* Stands in temperature_millicelsius where no sensor is fitted or it does not answer. */
#define TEMPERATURE_ABSENT INT32_MIN

struct sample {
    int32_t shunt_counts;
    int32_t voltage_counts;
    int32_t temperature_millicelsius;
    /* Raw millisecond counter; wraps after 2^32 ms. The current is the mean up to this moment. */
    uint32_t clock_millis;
};

#endif
