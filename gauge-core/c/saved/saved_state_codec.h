/* Turns a state into the bytes of a record and back; little endian, whatever the machine. */
#ifndef GAUGE_SAVED_SAVED_STATE_CODEC_H
#define GAUGE_SAVED_SAVED_STATE_CODEC_H

#include <stdbool.h>
#include <stdint.h>

#include "saved/saved_state.h"

#define SAVED_RECORD_BYTES 224

/* What a record says about the settings under which it was written. */
struct settings_mark {
    uint32_t fingerprint;
    int32_t chemistry_code;
    int32_t nominal_millivolts;
};

enum slot_content {
    /* Every byte is erased. */
    SLOT_BLANK,
    /* Neither blank nor a record that checks: torn, rotten, never ours, or absurd (M7). */
    SLOT_DAMAGED,
    /* A layout version that this core does not know. */
    SLOT_UNKNOWN_VERSION,
    SLOT_VALID
};

/* What is known of one slot; all but the content has a meaning only in a valid one. */
struct slot_header {
    enum slot_content content;
    uint32_t sequence;
    struct settings_mark mark;
};

void saved_state_encode(const struct saved_state *state, uint32_t sequence,
                        const struct settings_mark *mark, uint8_t record[SAVED_RECORD_BYTES]);

/* In order: blank, magic, version, length, check word; the first that fails decides. */
void saved_state_inspect(const uint8_t image[SAVED_RECORD_BYTES], struct slot_header *header);

/* Of a valid image: whether each field is what a core can have written (M7). */
bool saved_state_is_plausible(const uint8_t image[SAVED_RECORD_BYTES]);

/* Only of an image that saved_state_inspect found valid. */
void saved_state_decode(const uint8_t image[SAVED_RECORD_BYTES], struct saved_state *state);

/* One field of such an image: the writes begun over the memory's life. */
int32_t saved_state_saves_count(const uint8_t image[SAVED_RECORD_BYTES]);

#endif
