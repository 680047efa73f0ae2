/*
 * Tells a taper from a stop, and a charge from the mere presence of a charger (F7, F8): a battery
 * that fills lets the current fall slowly, something that opens lets it fall in a step.
 */
#ifndef GAUGE_RULES_FLOW_WATCH_H
#define GAUGE_RULES_FLOW_WATCH_H

#include <stdbool.h>
#include <stdint.h>

#include "rules/full_charge_limits.h"

/* The minute before the step and the minute of the step. */
#define FLOW_MEMORY_MINUTES 2

struct flow_watch {
    int32_t recent_microamps[FLOW_MEMORY_MINUTES];
    int32_t next_index;
    int32_t idle_minutes;
    bool flow_seen;
    bool stopped;
};

/* One minute's mean current, and whether a charger's voltage stood all minute. */
void flow_watch_add_minute(struct flow_watch *flow, const struct full_charge_limits *limits,
                           int32_t mean_microamps, bool voltage_up);

/* A minute whose figures are not to be trusted: it hides whether anything stopped. */
void flow_watch_add_doubtful_minute(struct flow_watch *flow);

/* Samples were missing, and a stop may hide among them; a stop that was seen stands (F15). */
void flow_watch_forget(struct flow_watch *flow);

#endif
