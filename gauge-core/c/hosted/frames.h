/* The binary form of the pipe: a head of 8 bytes and a payload, little-endian. */
#ifndef GAUGE_HOSTED_FRAMES_H
#define GAUGE_HOSTED_FRAMES_H

#include <stddef.h>
#include <stdint.h>

#include "hosted/link.h"

/* A payload that is being built; it is written out whole. */
struct frame {
    size_t count;
    uint8_t bytes[65536 - 8];
};

void frame_put(struct frame *frame, int size_bytes, uint64_t bits);
void frame_put_values(struct frame *frame, const int64_t *values, int count);
void frame_send(const struct frame *frame, enum link_kind kind, int place);

/* Waits for a frame; the kind, and the payload in the frame. */
int frame_receive(struct frame *frame);

/* The frame's payload as a message of the bench. */
void frame_parse(const struct frame *frame, int kind, struct link_message *message);

#endif
