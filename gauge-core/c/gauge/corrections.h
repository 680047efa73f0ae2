/*
 * The one place in which the count is corrected: acts on a rule's word, or on a command, and
 * announces it (G20). A reading that jumps without an event is a bug.
 */
#ifndef GAUGE_GAUGE_CORRECTIONS_H
#define GAUGE_GAUGE_CORRECTIONS_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/energy_counter.h"
#include "gauge/stages.h"
#include "port/codes.h"
#include "port/event_sink.h"

struct corrections {
    enum trust trust;
    /* A record was restored, and nothing proven or declared since (M6). */
    bool rests_on_record;
    bool held_at_limit;
    bool held_at_empty;
};

/* Where an action finds everything: the gauge's own stages, its sink, and the uptime of now. */
struct correction_scene {
    struct stages *s;
    const struct event_sink *events;
    int64_t uptime_millis;
};

void corrections_init(struct corrections *c);

static inline bool corrections_is_known(const struct corrections *c)
{
    return c->trust != TRUST_UNKNOWN;
}

/* The strongest reason to believe the figure or not. */
enum trust_reason corrections_trust_reason(const struct corrections *c, const struct stages *s,
                                           uint32_t fault_bits);

/* At most one rule sets the count in one minute: full, else empty, else rest. */
bool corrections_decide(struct corrections *c, const struct correction_scene *scene,
                        int32_t temperature_millicelsius);

/* Somebody declares a state of charge, 0 to 1,000,000 ppm (G15). */
void corrections_declare(struct corrections *c, const struct correction_scene *scene, int64_t ppm);

/* Another battery: nothing is known of it, and what was measured belongs to the old one. */
void corrections_new_battery(struct corrections *c, const struct correction_scene *scene,
                             struct energy_counter *energy);

/* Announces that a limit holds the count, once until it has left it by half a percent (G22). */
void corrections_announce_limits(struct corrections *c, const struct correction_scene *scene);

#endif
