/*
 * A battery gauge: counts in, a readout out. One object, owned by the caller; nothing is
 * allocated, nothing fails. Not for two threads at once.
 */
#ifndef GAUGE_GAUGE_GAUGE_H
#define GAUGE_GAUGE_GAUGE_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/energy_counter.h"
#include "gauge/corrections.h"
#include "gauge/fault_log.h"
#include "gauge/gauge_memory.h"
#include "gauge/last_sample.h"
#include "gauge/stages.h"
#include "port/codes.h"
#include "port/event_sink.h"
#include "port/readout.h"
#include "port/registers.h"
#include "port/sample.h"
#include "port/state_store.h"
#include "sense/elapsed_time.h"
#include "settings/gauge_settings.h"

struct gauge {
    struct event_sink events;
    struct elapsed_time clock;
    struct last_sample last;
    struct energy_counter energy;
    struct corrections corrections;
    struct stages s;
    struct fault_log faults;
    struct gauge_memory memory;
    bool check_battery;
};

/*
 * Builds a gauge; call gauge_power_up before the first tick. The settings are checked ones
 * (gauge_settings_check) and stay as they are while the gauge runs. A store of no slots keeps
 * nothing; a sink without a function drops every event.
 */
void gauge_init(struct gauge *g, const struct gauge_settings *settings,
                const struct state_store *store, const struct event_sink *events);

/*
 * Power came up: the newest saved record is taken over, and the time without power widens the band
 * (M4). Nothing is written. Anything but OFF_TIME_EXACT leaves the band without a limit.
 */
void gauge_power_up(struct gauge *g, int64_t off_millis, enum off_time off_time);

/* Takes one sample: check, sense, add, decide, apply, estimate. */
void gauge_tick(struct gauge *g, const struct sample *sample);

/* Carries out a command between two ticks. */
enum command_outcome gauge_command(struct gauge *g, enum command command, int64_t argument);

/* Takes other settings, between two ticks (the S rules); the old ones are free afterwards. */
void gauge_change_settings(struct gauge *g, const struct gauge_settings *settings);

/* Fills a readout with figures of one instant. */
void gauge_read(struct gauge *g, struct readout *readout);

/* Fills the table of everything that can be looked at. */
void gauge_inspect(struct gauge *g, struct registers *registers);

/* One word of the bus view, of the moment in which it is read (V4 to V8). */
uint16_t gauge_read_bus(struct gauge *g, int32_t code);
bool gauge_write_bus(struct gauge *g, int32_t code, uint16_t value);

#endif
