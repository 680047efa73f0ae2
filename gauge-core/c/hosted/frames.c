#include "hosted/frames.h"

#include <stdio.h>
#include <string.h>

#include "fixed/fixed_math.h"

static void put(uint8_t *place, int size_bytes, uint64_t bits)
{
    for (int i = 0; i < size_bytes; i++) {
        place[i] = (uint8_t)((bits >> (8 * i)) & 0xFFu);
    }
}

static uint64_t take(const uint8_t *place, int size_bytes)
{
    uint64_t bits = 0;
    for (int i = size_bytes - 1; i >= 0; i--) {
        bits = (bits << 8) | place[i];
    }
    return bits;
}

void frame_put(struct frame *frame, int size_bytes, uint64_t bits)
{
    put(frame->bytes + frame->count, size_bytes, bits);
    frame->count += (size_t)size_bytes;
}

void frame_put_values(struct frame *frame, const int64_t *values, int count)
{
    for (int i = 0; i < count; i++) {
        frame_put(frame, 8, (uint64_t)values[i]);
    }
}

void frame_send(const struct frame *frame, enum link_kind kind, int place)
{
    uint8_t head[8];
    put(head, 4, frame->count);
    put(head + 4, 2, (uint64_t)kind);
    put(head + 6, 2, (uint64_t)place);
    if (fwrite(head, 1, sizeof head, stdout) != sizeof head ||
        fwrite(frame->bytes, 1, frame->count, stdout) != frame->count) {
        link_break("standard output is closed");
    }
}

int frame_receive(struct frame *frame)
{
    uint8_t head[8];
    if (fread(head, 1, sizeof head, stdin) != sizeof head) {
        link_break("standard input ended before a frame");
    }
    frame->count = (size_t)take(head, 4);
    if (frame->count > sizeof frame->bytes ||
        fread(frame->bytes, 1, frame->count, stdin) != frame->count) {
        link_break("a frame is cut off, or longer than 65,528 bytes");
    }
    return (int)take(head + 4, 2);
}

static void need(const struct frame *frame, size_t count)
{
    if (frame->count < count) {
        link_break("a frame is shorter than its kind has to be");
    }
}

static void parse_set(const struct frame *frame, struct link_message *message)
{
    message->count = (int)(frame->count / 16);
    if (message->count > SETTING_COUNT) {
        link_break("a frame holds more settings than there are");
    }
    for (int i = 0; i < message->count; i++) {
        const uint8_t *place = frame->bytes + (size_t)i * 16;
        uint64_t number = take(place, 4);
        if (number >= SETTING_COUNT) {
            link_break("a frame holds a setting that is not in the table");
        }
        message->setting_numbers[i] = (int)number;
        message->setting_values[i] = int64_from_bits(take(place + 8, 8));
    }
}

static int32_t take_int32(const uint8_t *place)
{
    return int32_from_bits((uint32_t)take(place, 4));
}

static void parse_ticks(const struct frame *frame, struct link_message *message)
{
    message->count = (int)(frame->count / 16);
    if (message->count < 1 || message->count > LINK_MOST_TICKS) {
        link_break("a frame holds no tick, or more than the hello asked for");
    }
    for (int i = 0; i < message->count; i++) {
        const uint8_t *place = frame->bytes + (size_t)i * 16;
        message->samples[i] = (struct sample){take_int32(place), take_int32(place + 4),
                                              take_int32(place + 8), (uint32_t)take(place + 12, 4)};
    }
}

void frame_parse(const struct frame *frame, int kind, struct link_message *message)
{
    message->kind = (enum link_kind)kind;
    message->count = 0;
    switch (kind) {
    case LINK_SET:
        parse_set(frame, message);
        break;
    case LINK_TICKS:
        parse_ticks(frame, message);
        break;
    case LINK_POWER:
    case LINK_COMMAND:
        need(frame, 16);
        message->number = (int)min_int64((int64_t)take(frame->bytes, 4), INT16_MAX);
        message->argument = int64_from_bits(take(frame->bytes + 8, 8));
        break;
    case LINK_CHANGE:
    case LINK_ASK_REGISTERS:
    case LINK_END:
        break;
    default:
        link_break("a frame is of a kind that the bench does not send here");
    }
}
