#include "hosted/link.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fixed/fixed_math.h"
#include "hosted/csv.h"
#include "hosted/frames.h"
#include "hosted/names.h"
#include "hosted/text.h"

static bool frames;
static bool wants_digest;
static bool wants_bus;
static int place_in_batch;
static struct frame out;
static struct frame in;
static struct text_line line;

void link_break(const char *what)
{
    (void)fprintf(stderr, "gauge-twin: %s\n", what);
    exit(3);
}

void link_flush(void)
{
    if (fflush(stdout) != 0) {
        link_break("standard output is closed");
    }
}

void link_at_place(int place)
{
    place_in_batch = place;
}

static int32_t size_of(const char *text)
{
    int64_t value = 0;
    if (!parse_int64(text, &value) || value < 0 || value > INT32_MAX) {
        link_break("the store's size in the hello is no number");
    }
    return (int32_t)value;
}

void link_open(const struct link_wishes *wishes, int32_t *slots, int32_t *slot_bytes)
{
    *slots = 0;
    *slot_bytes = 0;
    text_receive(&line);
    if (line.count < 2 || strcmp(line.words[0], "hello") != 0 || strcmp(line.words[1], "1") != 0) {
        link_break("the bench has to begin with 'hello 1'");
    }
    while (strcmp(line.words[0], "ready") != 0) {
        text_receive(&line);
        if (strcmp(line.words[0], "store") == 0 && line.count >= 3) {
            *slots = size_of(line.words[1]);
            *slot_bytes = size_of(line.words[2]);
        }
        wants_digest = wants_digest || strcmp(line.words[0], "digest") == 0;
        wants_bus = wants_bus || strcmp(line.words[0], "bus") == 0;
    }
    (void)printf("hello 1 %s\nreadout all\nregisters all\nsettings all\nform %s\nbatch %d\n"
                 "answer last\nrestart message\n%s%sready\n",
                 wishes->name, wishes->frames ? "frames" : "text", wishes->batch,
                 wants_digest ? "digest\n" : "", wants_bus ? "bus\n" : "");
    link_flush();
    frames = wishes->frames;
}

bool link_wants_digest(void)
{
    return wants_digest;
}

void link_receive(struct link_message *message)
{
    place_in_batch = 0;
    if (frames) {
        int kind = frame_receive(&in);
        frame_parse(&in, kind, message);
    } else {
        text_receive_message(message);
    }
}

void link_send_readout(const int64_t values[LINK_READOUT_FIELDS])
{
    if (frames) {
        out.count = 0;
        frame_put_values(&out, values, LINK_READOUT_FIELDS);
        frame_send(&out, LINK_READOUT, 0);
        return;
    }
    (void)printf("readout");
    text_put_values(values, LINK_READOUT_FIELDS);
    (void)printf("\n");
}

void link_send_outcome(int outcome)
{
    if (frames) {
        out.count = 0;
        frame_put(&out, 4, (uint64_t)outcome);
        frame_put(&out, 4, 0);
        frame_send(&out, LINK_OUTCOME, 0);
        return;
    }
    char name[64];
    hyphen_name(&OUTCOME_NAMES, outcome, name);
    (void)printf("outcome %s\n", name);
}

void link_send_event(int event, int64_t uptime_millis, int64_t value,
                     const int64_t values[LINK_READOUT_FIELDS])
{
    if (frames) {
        out.count = 0;
        frame_put(&out, 4, (uint64_t)event);
        frame_put(&out, 4, 0);
        frame_put(&out, 8, (uint64_t)uptime_millis);
        frame_put(&out, 8, (uint64_t)value);
        frame_put_values(&out, values, LINK_READOUT_FIELDS);
        frame_send(&out, LINK_EVENT, place_in_batch);
        return;
    }
    char name[64];
    hyphen_name(&EVENT_NAMES, event, name);
    text_put_place(place_in_batch);
    (void)printf("event %s %" PRId64 " %" PRId64, name, uptime_millis, value);
    text_put_values(values, LINK_READOUT_FIELDS);
    (void)printf("\n");
}

void link_send_registers(const int64_t values[REGISTER_COUNT], uint64_t digest,
                         const int64_t words[WORD_COUNT])
{
    int64_t signed_digest = int64_from_bits(digest);
    if (frames) {
        out.count = 0;
        frame_put_values(&out, values, REGISTER_COUNT);
        frame_put_values(&out, &signed_digest, wants_digest ? 1 : 0);
        frame_put_values(&out, words, wants_bus ? WORD_COUNT : 0);
        frame_send(&out, LINK_REGISTERS, 0);
        return;
    }
    (void)printf("registers");
    text_put_values(values, REGISTER_COUNT);
    text_put_values(&signed_digest, wants_digest ? 1 : 0);
    text_put_values(words, wants_bus ? WORD_COUNT : 0);
    (void)printf("\n");
}

/* The bench's word for a request; for a read that is ok its bytes go to the destination. */
static enum link_answer stored(uint8_t *destination, size_t count)
{
    link_flush();
    if (frames) {
        int kind = frame_receive(&in);
        if (kind == LINK_CUT) {
            return LINK_POWER_CUT;
        }
        if (kind != LINK_STORED || in.count < 4) {
            link_break("an answer of the store was expected");
        }
        if ((in.bytes[0] | in.bytes[1] | in.bytes[2] | in.bytes[3]) != 0) {
            return LINK_FAILED;
        }
        if (in.count != 4 + count) {
            link_break("the store's answer has another length than was asked for");
        }
        if (count > 0) {
            (void)memcpy(destination, in.bytes + 4, count);
        }
        return LINK_OK;
    }
    text_receive(&line);
    if (strcmp(line.words[0], "cut") == 0) {
        return LINK_POWER_CUT;
    }
    if (strcmp(line.words[0], "failed") == 0) {
        return LINK_FAILED;
    }
    bool read = count > 0;
    if (strcmp(line.words[0], "ok") != 0 ||
        (read && (line.count < 2 || !text_parse_bytes(line.words[1], destination, count)))) {
        link_break("an answer of the store was expected");
    }
    return LINK_OK;
}

enum link_answer link_read(int32_t slot, uint8_t *destination, size_t count)
{
    if (frames) {
        out.count = 0;
        frame_put(&out, 4, (uint64_t)slot);
        frame_put(&out, 4, count);
        frame_send(&out, LINK_READ, place_in_batch);
    } else {
        text_put_place(place_in_batch);
        (void)printf("read %d %d\n", (int)slot, (int)count);
    }
    return stored(destination, count);
}

enum link_answer link_erase(int32_t slot)
{
    if (frames) {
        out.count = 0;
        frame_put(&out, 4, (uint64_t)slot);
        frame_send(&out, LINK_ERASE, place_in_batch);
    } else {
        text_put_place(place_in_batch);
        (void)printf("erase %d\n", (int)slot);
    }
    return stored(NULL, 0);
}

enum link_answer link_program(int32_t slot, const uint8_t *source, size_t count)
{
    if (frames) {
        out.count = 0;
        frame_put(&out, 4, (uint64_t)slot);
        for (size_t i = 0; i < count; i++) {
            frame_put(&out, 1, source[i]);
        }
        frame_send(&out, LINK_PROGRAM, place_in_batch);
    } else {
        text_put_place(place_in_batch);
        (void)printf("program %d ", (int)slot);
        text_put_bytes(source, count);
        (void)printf("\n");
    }
    return stored(NULL, 0);
}
