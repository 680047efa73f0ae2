#include "saved/saved_state_codec.h"

#include <stdbool.h>

#include "fixed/crc32.h"
#include "fixed/fixed_math.h"

#define MAGIC UINT32_C(0x56415347)
#define VERSION 1
#define MAGIC_OFFSET 0
#define VERSION_OFFSET 4
#define LENGTH_OFFSET 6
#define SEQUENCE_OFFSET 8
#define FINGERPRINT_OFFSET 12
#define CHEMISTRY_OFFSET 16
#define NOMINAL_OFFSET 20
#define PAYLOAD_OFFSET 24
#define SAVES_COUNT_OFFSET 212
#define CRC_OFFSET 220
#define ERASED 0xFFu

static uint8_t *put(uint8_t *place, int size_bytes, uint64_t bits)
{
    for (int i = 0; i < size_bytes; i++) {
        place[i] = (uint8_t)((bits >> (8 * i)) & 0xFFu);
    }
    return place + size_bytes;
}

static uint64_t take(const uint8_t *place, int size_bytes)
{
    uint64_t bits = 0;
    for (int i = size_bytes - 1; i >= 0; i--) {
        bits = (bits << 8) | place[i];
    }
    return bits;
}

static int32_t take_int32(const uint8_t *place)
{
    return int32_from_bits((uint32_t)take(place, 4));
}

/* Conversion to unsigned is modulo 2^64, so a sign is extended whatever the field's width. */
#define PUT_INT64(name, low, high) place = put(place, 8, (uint64_t)state->name);
#define PUT_INT32(name, low, high) place = put(place, 4, (uint64_t)state->name);
#define PUT_INT8(name, low, high) place = put(place, 1, (uint64_t)state->name);

void saved_state_encode(const struct saved_state *state, uint32_t sequence,
                        const struct settings_mark *mark, uint8_t record[SAVED_RECORD_BYTES])
{
    (void)put(record + MAGIC_OFFSET, 4, MAGIC);
    (void)put(record + VERSION_OFFSET, 2, VERSION);
    (void)put(record + LENGTH_OFFSET, 2, SAVED_RECORD_BYTES);
    (void)put(record + SEQUENCE_OFFSET, 4, sequence);
    (void)put(record + FINGERPRINT_OFFSET, 4, mark->fingerprint);
    (void)put(record + CHEMISTRY_OFFSET, 4, (uint64_t)mark->chemistry_code);
    (void)put(record + NOMINAL_OFFSET, 4, (uint64_t)mark->nominal_millivolts);
    uint8_t *place = record + PAYLOAD_OFFSET;
    SAVED_FIELD_LIST(PUT_INT64, PUT_INT32, PUT_INT8)
    (void)put(place, 4, crc32_of(record, CRC_OFFSET));
}

static bool is_blank(const uint8_t *image)
{
    for (int i = 0; i < SAVED_RECORD_BYTES; i++) {
        if (image[i] != ERASED) {
            return false;
        }
    }
    return true;
}

static enum slot_content content_of(const uint8_t *image)
{
    if (is_blank(image)) {
        return SLOT_BLANK;
    }
    if (take(image + MAGIC_OFFSET, 4) != MAGIC) {
        return SLOT_DAMAGED;
    }
    if (take(image + VERSION_OFFSET, 2) != VERSION) {
        return SLOT_UNKNOWN_VERSION;
    }
    if (take(image + LENGTH_OFFSET, 2) != SAVED_RECORD_BYTES) {
        return SLOT_DAMAGED;
    }
    return take(image + CRC_OFFSET, 4) == crc32_of(image, CRC_OFFSET) ? SLOT_VALID : SLOT_DAMAGED;
}

void saved_state_inspect(const uint8_t image[SAVED_RECORD_BYTES], struct slot_header *header)
{
    header->content = content_of(image);
    if (header->content != SLOT_VALID) {
        return;
    }
    header->sequence = (uint32_t)take(image + SEQUENCE_OFFSET, 4);
    header->mark.fingerprint = (uint32_t)take(image + FINGERPRINT_OFFSET, 4);
    header->mark.chemistry_code = take_int32(image + CHEMISTRY_OFFSET);
    header->mark.nominal_millivolts = take_int32(image + NOMINAL_OFFSET);
}

static int8_t take_int8(const uint8_t *place)
{
    return (int8_t)(place[0] <= INT8_MAX ? place[0] : (int)place[0] - 256);
}

#define TAKE_INT64(name, low, high) \
    state->name = int64_from_bits(take(place, 8)); \
    place += 8;
#define TAKE_INT32(name, low, high) \
    state->name = take_int32(place); \
    place += 4;
#define TAKE_INT8(name, low, high) \
    state->name = take_int8(place); \
    place += 1;

void saved_state_decode(const uint8_t image[SAVED_RECORD_BYTES], struct saved_state *state)
{
    const uint8_t *place = image + PAYLOAD_OFFSET;
    SAVED_FIELD_LIST(TAKE_INT64, TAKE_INT32, TAKE_INT8)
}

static bool is_within(int64_t value, int64_t low, int64_t high)
{
    return value >= low && value <= high;
}

#define LOOK_AT_INT64(name, low, high) \
    plausible = plausible && is_within(int64_from_bits(take(place, 8)), low, high); \
    place += 8;
#define LOOK_AT_INT32(name, low, high) \
    plausible = plausible && is_within(take_int32(place), low, high); \
    place += 4;
#define LOOK_AT_INT8(name, low, high) \
    plausible = plausible && is_within(take_int8(place), low, high); \
    place += 1;

bool saved_state_is_plausible(const uint8_t image[SAVED_RECORD_BYTES])
{
    const uint8_t *place = image + PAYLOAD_OFFSET;
    bool plausible = true;
    SAVED_FIELD_LIST(LOOK_AT_INT64, LOOK_AT_INT32, LOOK_AT_INT8)
    /* The first two fields: the count lies within the capacity. */
    return plausible && take(image + PAYLOAD_OFFSET, 8) <= take(image + PAYLOAD_OFFSET + 8, 8);
}

int32_t saved_state_saves_count(const uint8_t image[SAVED_RECORD_BYTES])
{
    return take_int32(image + SAVES_COUNT_OFFSET);
}
