#include "saved/slot_ring.h"

#include <stddef.h>

#include "fixed/fixed_math.h"
#include "fixed/sequence.h"

/* Each slot is read at most this often: one reading may be spoilt by low volts. */
#define READING_COUNT 2
#define FEWEST_SLOTS 2

void slot_ring_init(struct slot_ring *ring, const struct state_store *store,
                    const struct settings_mark *settings)
{
    ring->store = *store;
    ring->settings = *settings;
    bool usable = store->slots >= FEWEST_SLOTS && store->slot_bytes >= SAVED_RECORD_BYTES;
    ring->slot_count = usable ? min_int32(store->slots, STORE_MOST_SLOTS) : 0;
    ring->newest_slot = SLOT_RING_NO_SLOT;
    ring->damaged_slots = 0;
    ring->outcome = SLOT_OUTCOME_NONE_VALID;
    ring->last_sequence = 0;
    ring->saves_count = 0;
    ring->surveyed = false;
    for (int32_t i = 0; i < STORE_MOST_SLOTS; i++) {
        ring->slots[i] = (struct ring_slot){{SLOT_BLANK, 0, {0, 0, 0}}, false, false};
    }
}

static bool is_valid(const struct slot_ring *ring, int32_t slot)
{
    return ring->slots[slot].header.content == SLOT_VALID;
}

/* Only the newest record that checks is ever believed. */
static void choose(struct slot_ring *ring)
{
    ring->newest_slot = SLOT_RING_NO_SLOT;
    ring->damaged_slots = 0;
    for (int32_t i = 0; i < ring->slot_count; i++) {
        if (is_valid(ring, i)) {
            if (ring->newest_slot == SLOT_RING_NO_SLOT ||
                sequence_is_newer(ring->slots[i].header.sequence,
                                  ring->slots[ring->newest_slot].header.sequence)) {
                ring->newest_slot = i;
            }
        } else if (ring->slots[i].header.content != SLOT_BLANK) {
            ring->damaged_slots++;
        }
    }
    if (ring->newest_slot == SLOT_RING_NO_SLOT) {
        ring->outcome = SLOT_OUTCOME_NONE_VALID;
        return;
    }
    const struct settings_mark *mark = &ring->slots[ring->newest_slot].header.mark;
    if (mark->chemistry_code != ring->settings.chemistry_code ||
        mark->nominal_millivolts != ring->settings.nominal_millivolts) {
        ring->outcome = SLOT_OUTCOME_FOREIGN_BATTERY;
    } else if (mark->fingerprint != ring->settings.fingerprint) {
        ring->outcome = SLOT_OUTCOME_FOREIGN_SETTINGS;
    } else {
        ring->outcome =
            ring->damaged_slots > 0 ? SLOT_OUTCOME_OLDER_ONE_USED : SLOT_OUTCOME_NEWEST;
    }
}

/* Reads a slot and its header; a second time where the first does not check. */
static bool read_slot(struct slot_ring *ring, int32_t slot, uint8_t *image)
{
    struct slot_header *header = &ring->slots[slot].header;
    for (int reading = 0; reading < READING_COUNT; reading++) {
        if (ring->store.read(ring->store.context, slot, image, SAVED_RECORD_BYTES) == STORE_OK) {
            saved_state_inspect(image, header);
            if (header->content == SLOT_VALID && !saved_state_is_plausible(image)) {
                header->content = SLOT_DAMAGED;
            }
        } else {
            header->content = SLOT_DAMAGED;
        }
        if (header->content == SLOT_VALID || header->content == SLOT_BLANK) {
            break;
        }
    }
    return header->content == SLOT_VALID;
}

/* Reads every slot, decides, and leaves the chosen record in the image. */
static void survey(struct slot_ring *ring, uint8_t *image)
{
    for (int32_t i = 0; i < ring->slot_count; i++) {
        (void)read_slot(ring, i, image);
    }
    do {
        choose(ring);
        /* A record that checked a moment ago and does not now is damaged: choose again. */
    } while (ring->newest_slot != SLOT_RING_NO_SLOT && !read_slot(ring, ring->newest_slot, image));
    bool found = ring->newest_slot != SLOT_RING_NO_SLOT;
    ring->last_sequence = 0;
    ring->saves_count = 0;
    if (found) {
        ring->last_sequence = ring->slots[ring->newest_slot].header.sequence;
        ring->saves_count = saved_state_saves_count(image);
    }
    ring->surveyed = true;
}

enum slot_outcome slot_ring_open(struct slot_ring *ring, struct saved_state *state)
{
    uint8_t image[SAVED_RECORD_BYTES];
    for (int32_t i = 0; i < ring->slot_count; i++) {
        ring->slots[i].failed = false;
    }
    survey(ring, image);
    if (ring->outcome != SLOT_OUTCOME_NONE_VALID &&
        ring->outcome != SLOT_OUTCOME_FOREIGN_BATTERY) {
        saved_state_decode(image, state);
    }
    return ring->outcome;
}

static bool is_worth_less(const struct slot_ring *ring, int32_t candidate, int32_t other)
{
    if (!is_valid(ring, other)) {
        return false;
    }
    return !is_valid(ring, candidate) || sequence_is_newer(ring->slots[other].header.sequence,
                                                           ring->slots[candidate].header.sequence);
}

/*
 * Which slot to write next: one that holds no record that checks, else the oldest; among equals
 * the first after the newest. Never the newest record that checks.
 */
static int32_t choose_victim(const struct slot_ring *ring, bool also_failed)
{
    int32_t victim = SLOT_RING_NO_SLOT;
    for (int32_t step = 1; step <= ring->slot_count; step++) {
        /* From NO_SLOT (-1) the first step leads to slot 0. */
        int32_t slot = (ring->newest_slot + step) % ring->slot_count;
        bool excluded = ring->slots[slot].tried || (ring->slots[slot].failed && !also_failed);
        if (slot == ring->newest_slot || excluded) {
            continue;
        }
        if (victim == SLOT_RING_NO_SLOT || is_worth_less(ring, slot, victim)) {
            victim = slot;
        }
    }
    return victim;
}

/* A slot not tried in this save: first one that never failed, then any. */
static int32_t next_victim(const struct slot_ring *ring)
{
    int32_t slot = choose_victim(ring, false);
    return slot != SLOT_RING_NO_SLOT ? slot : choose_victim(ring, true);
}

/* Reads back and compares; the copy is the room for the reading. */
static bool holds(struct slot_ring *ring, int32_t slot, const uint8_t *record)
{
    uint8_t copy[SAVED_RECORD_BYTES];
    if (ring->store.read(ring->store.context, slot, copy, SAVED_RECORD_BYTES) != STORE_OK) {
        return false;
    }
    for (int i = 0; i < SAVED_RECORD_BYTES; i++) {
        if (copy[i] != record[i]) {
            return false;
        }
    }
    return true;
}

/* Erase, program, read back, compare; only then is the record the current one. */
static bool write_slot(struct slot_ring *ring, int32_t slot, struct saved_state *state,
                       uint8_t *record)
{
    /* Every attempt takes a number of its own, which wraps on purpose; their count saturates. */
    ring->last_sequence++;
    ring->saves_count += ring->saves_count < INT32_MAX ? 1 : 0;
    state->saves_count = ring->saves_count;
    saved_state_encode(state, ring->last_sequence, &ring->settings, record);
    ring->slots[slot].header.content = SLOT_DAMAGED;
    if (ring->store.erase(ring->store.context, slot) != STORE_OK ||
        ring->store.program(ring->store.context, slot, record, SAVED_RECORD_BYTES) != STORE_OK ||
        !holds(ring, slot, record)) {
        return false;
    }
    saved_state_inspect(record, &ring->slots[slot].header);
    ring->newest_slot = slot;
    return true;
}

enum save_outcome slot_ring_save(struct slot_ring *ring, struct saved_state *state)
{
    /* One buffer for the survey and for the record: this is where the stack is deepest. */
    uint8_t image[SAVED_RECORD_BYTES];
    if (ring->slot_count == 0) {
        return SAVE_OUTCOME_NO_STORE;
    }
    if (!ring->surveyed) {
        /* Without a survey the newest record could be the one erased. */
        survey(ring, image);
    }
    for (int32_t i = 0; i < ring->slot_count; i++) {
        ring->slots[i].tried = false;
    }
    bool any_failed = false;
    for (int32_t slot = next_victim(ring); slot != SLOT_RING_NO_SLOT; slot = next_victim(ring)) {
        ring->slots[slot].tried = true;
        ring->slots[slot].failed = !write_slot(ring, slot, state, image);
        if (!ring->slots[slot].failed) {
            return any_failed ? SAVE_OUTCOME_SAVED_AFTER_FAILURE : SAVE_OUTCOME_SAVED;
        }
        any_failed = true;
    }
    return SAVE_OUTCOME_NOT_SAVED;
}
