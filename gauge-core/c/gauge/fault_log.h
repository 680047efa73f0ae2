/* Faults as bits, with a bounded record of each: count, first and last time (G21). */
#ifndef GAUGE_GAUGE_FAULT_LOG_H
#define GAUGE_GAUGE_FAULT_LOG_H

#include <stdint.h>

#include "port/codes.h"
#include "port/event_sink.h"

/* The standing faults that the diagnosis judges; the memory's are judged where it is used. */
#define FAULT_DIAGNOSED_BITS (FAULT_BIT(FAULT_MEMORY_FAILING) - FAULT_BIT(FAULT_POLARITY_REVERSED))

/* What hides the charge that flowed: a rail, or a frame of garbage. */
#define FAULT_CHARGE_HIDDEN_BITS \
    (FAULT_BIT(FAULT_SHUNT_CLIPPED) | FAULT_BIT(FAULT_COUNTS_IMPLAUSIBLE))

/* How often a fault appeared, and when; times are uptimes, 0 if never. */
struct fault_record {
    int64_t first_uptime_millis;
    int64_t last_uptime_millis;
    int32_t count;
};

struct fault_log {
    struct fault_record records[FAULT_COUNT];
    uint32_t momentary_bits;
    uint32_t previous_bits;
    uint32_t standing_bits;
    int32_t fault_ticks;
};

/* Power came up: the log starts anew. */
void fault_log_restart(struct fault_log *log);

/* Nothing momentary is wrong until it is raised. */
static inline void fault_log_begin_tick(struct fault_log *log)
{
    log->previous_bits = log->momentary_bits;
    log->momentary_bits = 0;
}

/* Notes a momentary fault of this tick; announced when the tick before did not have it. */
void fault_log_raise(struct fault_log *log, const struct event_sink *events, enum fault fault,
                     int64_t uptime_millis);

/* Says which of the faults of the mask stand now; those that did not before are announced. */
void fault_log_stand(struct fault_log *log, const struct event_sink *events, uint32_t mask,
                     uint32_t bits, int64_t uptime_millis);

/* Faults of the last tick and those that stand. */
static inline uint32_t fault_log_present_bits(const struct fault_log *log)
{
    return log->momentary_bits | log->standing_bits;
}

#endif
