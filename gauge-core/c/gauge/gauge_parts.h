/* What the files of the gauge share; nobody else includes it. */
#ifndef GAUGE_GAUGE_GAUGE_PARTS_H
#define GAUGE_GAUGE_GAUGE_PARTS_H

#include "gauge/gauge.h"

static inline struct correction_scene gauge_scene(struct gauge *g)
{
    return (struct correction_scene){&g->s, &g->events, g->clock.uptime_millis};
}

/* One standing fault that the diagnosis does not judge. */
static inline void gauge_stand(struct gauge *g, enum fault fault, bool stands)
{
    fault_log_stand(&g->faults, &g->events, FAULT_BIT(fault), stands ? FAULT_BIT(fault) : 0,
                    g->clock.uptime_millis);
}

/* A stretch of time at the last sample's figures; within one minute. */
static inline void gauge_add_stretch(struct gauge *g, int32_t millis)
{
    int32_t microamps = g->last.current_microamps;
    int32_t microvolts = g->last.voltage_microvolts;
    charge_accumulator_add(&g->s.charge, microamps, millis);
    minute_mean_add(&g->s.minute, microamps, microvolts, millis);
    energy_counter_add(&g->energy, microvolts / 1000, microamps, millis);
    load_filter_add_stretch(&g->s.load_filter, microamps, millis);
}

/*
 * What follows is apart from the tick: it is rare, and would cost every tick registers.
 */

/* Hours, display and bus; with the edges of the band before them after a command. */
void gauge_update_estimates(struct gauge *g);
void gauge_after_command(struct gauge *g);

/* Any tick, in the order in which each may look at what the one before did. */
void gauge_tick_in_full(struct gauge *g, const struct sample *sample, int32_t elapsed_millis);

/* Settles the minute under way and begins another. */
void gauge_end_minute_early(struct gauge *g);

/* Writes a record of this instant. */
void gauge_save(struct gauge *g);

static inline void gauge_save_if_due(struct gauge *g, int32_t elapsed_millis)
{
    if (gauge_memory_due(&g->memory, &g->s, g->last.voltage_microvolts, elapsed_millis) !=
        SAVE_REASON_NONE) {
        gauge_save(g);
    }
}

#endif
