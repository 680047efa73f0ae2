/* The samples and the settings of a folder of vectors, in memory, to be fed again and again. */
#ifndef GAUGE_HOSTED_DAY_H
#define GAUGE_HOSTED_DAY_H

#include <stdbool.h>
#include <stdint.h>

#include "gauge/gauge.h"

struct day {
    struct gauge_settings settings;
    struct sample *samples;
    long sample_count;
    /* Where the clock of the next pass begins, so that nothing is a repeated sample. */
    uint32_t start_millis;
};

/* False with a message where a file cannot be read. */
bool day_read(struct day *day, const char *folder);

/* Feeds all samples once. */
void day_pass(struct day *day, struct gauge *gauge);

void day_free(struct day *day);

#endif
