/* Receives what the gauge announces, in the tick in which it happens. */
#ifndef GAUGE_PORT_EVENT_SINK_H
#define GAUGE_PORT_EVENT_SINK_H

#include <stddef.h>
#include <stdint.h>

#include "port/codes.h"

/*
 * A null function drops every event. The value is the event's own figure, in the unit that the
 * Java enum Event names; uptime is counted from power-up.
 */
struct event_sink {
    void (*on_event)(void *context, enum event event, int64_t uptime_millis, int64_t value);
    void *context;
};

static inline void announce(const struct event_sink *sink, enum event event, int64_t uptime_millis,
                            int64_t value)
{
    if (sink->on_event != NULL) {
        sink->on_event(sink->context, event, uptime_millis, value);
    }
}

#endif
