/*
 * Memory that keeps its bytes without power, in slots that are erased and programmed whole. A port
 * fills in three functions of its flash or FRAM driver.
 */
#ifndef GAUGE_PORT_STATE_STORE_H
#define GAUGE_PORT_STATE_STORE_H

#include <stddef.h>
#include <stdint.h>

#define STORE_OK 0
#define STORE_FAILED (-1)

/*
 * The most slots that the ring has room for; a store with more is used up to here. It costs 24
 * bytes of state a slot, so a small target sets it to what its memory has.
 */
#ifndef STORE_MOST_SLOTS
#define STORE_MOST_SLOTS 64
#endif

struct state_store {
    /* 0 for a store that keeps nothing, else at least 2. */
    int32_t slots;
    int32_t slot_bytes;
    /* Reads up to count bytes from the slot's first one; answers STORE_OK or STORE_FAILED. */
    int (*read)(void *context, int32_t slot, uint8_t *destination, size_t count);
    /* Every byte of the slot becomes FF. */
    int (*erase)(void *context, int32_t slot);
    /* Programs an erased slot from its first byte. */
    int (*program)(void *context, int32_t slot, const uint8_t *source, size_t count);
    void *context;
};

#endif
