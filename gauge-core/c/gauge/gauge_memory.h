/*
 * What the gauge keeps over a power cut: captures the stages into a record, restores them from
 * one, and knows when a save is due (the M rules).
 */
#ifndef GAUGE_GAUGE_GAUGE_MEMORY_H
#define GAUGE_GAUGE_GAUGE_MEMORY_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/energy_counter.h"
#include "gauge/corrections.h"
#include "gauge/stages.h"
#include "saved/save_schedule.h"
#include "saved/slot_ring.h"

struct gauge_memory {
    struct save_schedule schedule;
    struct slot_ring ring;
    /* The record that was restored, then the one that was written last. */
    struct saved_state state;
    enum slot_outcome found;
    int64_t uptime_before_millis;
    /* Saves tried since power-up. */
    int64_t saves_count;
    bool keeps;
};

/* What goes into a record beside the stages. */
struct memory_scene {
    struct stages *s;
    struct energy_counter *energy;
    struct corrections *corrections;
};

void gauge_memory_init(struct gauge_memory *memory, const struct state_store *store,
                       const struct gauge_settings *settings);

/* Reads the newest record; NONE_VALID without a store. Writes nothing. */
enum slot_outcome gauge_memory_open(struct gauge_memory *memory);

/* There are bytes where a record should be and none checks. */
bool gauge_memory_is_lost(const struct gauge_memory *memory);

/*
 * Puts the record that was found into the stages. Under other settings the percentage is kept
 * (M3). Answers by how much the count moved for that.
 */
int64_t gauge_memory_restore(struct gauge_memory *memory, const struct memory_scene *scene);

/* What the record cannot know widens the band. */
void gauge_memory_widen_restored(const struct gauge_memory *memory, struct stages *s);

/* The stages stand as after power-up: what they hold is what the memory holds. */
void gauge_memory_begin(struct gauge_memory *memory, const struct stages *s);

/* Writes a record of this instant; the answer says whether the memory took it. */
enum save_outcome gauge_memory_save(struct gauge_memory *memory, const struct memory_scene *scene,
                                    int64_t uptime_millis, const struct last_sample *last);

/* Other settings: another mark, another step, and a save at once (S5). */
void gauge_memory_settings_changed(struct gauge_memory *memory, const struct stages *s);

/* Asks, once a tick, whether to save. */
static inline enum save_reason gauge_memory_due(struct gauge_memory *memory,
                                                const struct stages *s, int32_t voltage_microvolts,
                                                int32_t elapsed_millis)
{
    if (!memory->keeps) {
        return SAVE_REASON_NONE;
    }
    struct save_moment now = {charge_accumulator_charge(&s->charge), stages_gross_nanocoulombs(s),
                              voltage_microvolts, elapsed_millis};
    return save_schedule_due(&memory->schedule, &now);
}

#endif
