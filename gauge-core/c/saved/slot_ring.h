/*
 * Keeps the state in a ring of slots so that a power cut at any moment leaves the record before or
 * the new one, whole (M1; docs/saved-state.md). Nothing is written at power-up.
 */
#ifndef GAUGE_SAVED_SLOT_RING_H
#define GAUGE_SAVED_SLOT_RING_H

#include <stdbool.h>
#include <stdint.h>

#include "port/state_store.h"
#include "saved/saved_state_codec.h"

#define SLOT_RING_NO_SLOT (-1)

/* What was found in the slots at power-up, in one word. */
enum slot_outcome {
    SLOT_OUTCOME_NEWEST,
    SLOT_OUTCOME_OLDER_ONE_USED,
    SLOT_OUTCOME_NONE_VALID,
    SLOT_OUTCOME_FOREIGN_SETTINGS,
    SLOT_OUTCOME_FOREIGN_BATTERY
};

/* The one-word answer to a save. */
enum save_outcome {
    SAVE_OUTCOME_SAVED,
    SAVE_OUTCOME_SAVED_AFTER_FAILURE,
    SAVE_OUTCOME_NOT_SAVED,
    SAVE_OUTCOME_NO_STORE
};

/* One slot as the ring knows it. */
struct ring_slot {
    struct slot_header header;
    bool failed;
    bool tried;
};

struct slot_ring {
    struct state_store store;
    struct settings_mark settings;
    /* 0 where the store keeps nothing that a record fits. */
    int32_t slot_count;
    int32_t newest_slot;
    int32_t damaged_slots;
    enum slot_outcome outcome;
    uint32_t last_sequence;
    int32_t saves_count;
    bool surveyed;
    struct ring_slot slots[STORE_MOST_SLOTS];
};

/* The store is not touched before slot_ring_open. */
void slot_ring_init(struct slot_ring *ring, const struct state_store *store,
                    const struct settings_mark *settings);

/*
 * Reads the slots after power-up; the state is left as it is where the answer is NONE_VALID or
 * FOREIGN_BATTERY.
 */
enum slot_outcome slot_ring_open(struct slot_ring *ring, struct saved_state *state);

/* Writes a state as the newest record; sets its saves_count. */
enum save_outcome slot_ring_save(struct slot_ring *ring, struct saved_state *state);

#endif
